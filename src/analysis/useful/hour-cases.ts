import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import type { Bin } from '../../season/season.ts';
import { airMoistureWb, plateausC, toldByWb } from './air-moisture.ts';
import type { MoistAir } from './entering-moist-air.ts';
import { isothermsInUse } from './isotherms-in-use.ts';
import type { HourCase } from './judged-hours.ts';
import type { Limits } from './useful-limits.ts';

/** What is known of some hours before they are judged; arrays are [pieces]. */
export interface KnownHours {
  air: MoistAir;
  /** the same air with less and with more warming by the fan, where only a stated figure tells it */
  otherWarmings: readonly MoistAir[];
  grainWb: Float64Array;
  grainC: Float64Array;
}

export interface CaseChoices {
  grain: Pick<Bin['grain'], 'crop' | 'isotherm'>;
  /** by which the cables turned humidity into moisture, as season.yaml states it; null: the moisture is taken as it is */
  cableIsotherm: string | null;
  limits: Limits;
  /** half-width of the interval of the mean moisture, fraction: what a single moment is unsure by */
  moistureHalf: number;
  pressurePa: number;
  /** false: temperatures are left as the air's own, where no temperature decides anything */
  withPlateaus: boolean;
}

export interface HourCases {
  main: HourCase;
  /** by what was changed: isotherms, limits, moisture, warming */
  changed: readonly (readonly HourCase[])[];
  isotherm: Isotherm;
}

/** The hours as the usual choice shows them, and as each other choice does, one changed at a time. */
export function hourCases({ air, otherWarmings, grainWb, grainC }: KnownHours, choices: CaseChoices): HourCases {
  const { grain, limits, moistureHalf, pressurePa } = choices;
  const { main, others } = isothermsInUse(grain);
  const cable = choices.cableIsotherm === null ? null : cableOf(grain.crop, choices.cableIsotherm);
  const told = (isotherm: Isotherm) => (cable === null ? grainWb : toldByWb(cable, isotherm, grainC, grainWb));
  const moisture = told(main);
  const plateaus = (of: MoistAir) => (choices.withPlateaus ? plateausC(main, of, moisture, pressurePa) : of.tempC);
  const base: HourCase = {
    airWb: airMoistureWb(main, air),
    grainWb: moisture,
    airC: air.tempC,
    plateauC: plateaus(air),
    grainC,
    limits,
  };
  const byLimits = [0.5, 2].map((factor) => ({
    ...base,
    limits: { moistureWb: factor * limits.moistureWb, temperatureK: factor * limits.temperatureK },
  }));
  const byIsotherm = others.map((isotherm) => {
    const own = told(isotherm);
    const airWb = airMoistureWb(isotherm, air);
    // Where another set does not speak, the usual one stands: a gap of the set is no news of the hour.
    return {
      ...base,
      airWb: airWb.map((value, i) => (Number.isNaN(value + own[i]) ? base.airWb[i] : value)),
      grainWb: own.map((value, i) => (Number.isNaN(value + airWb[i]) ? moisture[i] : value)),
    };
  });
  const byMoisture = [-1, 1].map((sign) => ({
    ...base,
    grainWb: moisture.map((value) => value + sign * moistureHalf),
  }));
  const byWarming = otherWarmings.map((other) => ({
    ...base,
    airWb: airMoistureWb(main, other),
    airC: other.tempC,
    plateauC: plateaus(other),
  }));
  return { main: base, changed: [byLimits, byIsotherm, byMoisture, byWarming], isotherm: main };
}

/** A name that the crop does not have is another crop's: season.yaml names one for all bins. */
function cableOf(crop: string, name: string): Isotherm | null {
  try {
    return isothermOf(crop, name);
  } catch {
    return null;
  }
}
