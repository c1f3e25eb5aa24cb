import { humidityRatio, vapourPressurePa } from '../../air/humidity-ratio.ts';
import { saturationPressurePa } from '../../air/saturation.ts';
import { specificVolumeM3Kg } from '../../air/volume.ts';
import { EQUILIBRIUM_RH_RANGE } from '../../grain/equilibrium.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { isothermMoistureDb } from '../../grain/isotherm-equations.ts';
import { dryFromWet, wetFromDry } from '../../grain/moisture-basis.ts';
import type { Outcome, RunTrace } from '../../simulation/run/outcome.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { startMoistureDb } from '../../simulation/run/start-moisture.ts';
import { airCanTake } from './held-back-air.ts';

/** A strategy's run in one year's weather. */
export interface YearRun {
  weather: string;
  spec: RunSpec;
  outcome: Outcome;
  trace: RunTrace;
}

/** A year until the target was reached for good, or to the run's end. Means are over the fan's hours. */
export interface YearAir {
  weather: string;
  reached: boolean;
  /** ms UTC at which the target was reached; null where it was not */
  reachedMs: number | null;
  days: number;
  fanHours: number;
  hoursPerDay: number;
  /** entering air */
  plenumC: number;
  plenumRh: number;
  plenumEmcWb: number;
  /** dry air in a cubic metre that the fans took in: a fan moves a volume, and colder air is more of it, kg/m3 */
  airKgM3: number;
  /** that a kilogram of entering air could take from the grain as it came in, mean of the fan's hours, kg/kg */
  canTake: number;
  /** that air as warm could have taken at a relative humidity the same in all years, kg/kg */
  asWarm: number;
  /** that a kilogram of air did take, kg/kg */
  took: number;
  /** that the grain gave, kg per kg of dry matter */
  water: number;
}

/** What a run's hours say of its air, or a sentence why they cannot. */
export type RunAir = { air: Omit<YearAir, 'asWarm'>; hours: FanHours; why: null } | { air: null; why: string };

/** The fan's hours: share of each, entering air, and the grain as it came in. Arrays are [hours]. */
export interface FanHours {
  isotherm: Isotherm;
  fan: Float64Array;
  plenumC: Float64Array;
  pressurePa: number;
  moistureDb: number;
}

/** Mean of what an hour gives, weighed by the fan's share of it. */
function overFanHours(fan: Float64Array, of: (hour: number) => number): number {
  let sum = 0;
  let weight = 0;
  fan.forEach((share, hour) => {
    if (!(share > 0)) return;
    sum += share * of(hour);
    weight += share;
  });
  return sum / weight;
}

/** Water that the fan's hours could have taken had their air been at one relative humidity, kg/kg. */
export function takenAtHumidity({ isotherm, fan, plenumC, pressurePa, moistureDb }: FanHours, rh: number): number {
  return overFanHours(fan, (hour) =>
    airCanTake(isotherm, plenumC[hour], humidityRatio(plenumC[hour], rh, pressurePa), moistureDb, pressurePa),
  );
}

/**
 * @param run      of a strategy without a heater, with its trace
 * @param stretch  days from the filling to look at in place of those until the target was reached
 */
export function runAir({ weather, spec, outcome, trace }: YearRun, stretch?: number): RunAir {
  const { hours, bed, levels, fromHour = 0, endHour } = spec;
  const { pressurePa } = hours;
  const done = outcome.reachedTarget ? outcome.reachedHour : endHour;
  const until = stretch === undefined ? done : Math.min(endHour, fromHour + Math.round(24 * stretch));
  if (levels.some(({ hour }) => hour > fromHour && hour < until))
    return { air: null, why: 'Grain came in or was taken out while it was drying, so its pace is not one.' };
  const fan = trace.fan.subarray(fromHour, until);
  const fanHours = fan.reduce((sum, share) => sum + share, 0);
  if (!(fanHours > 0)) return { air: null, why: 'The fan did not run before that.' };
  const plenumC = trace.plenumC.subarray(fromHour, until);
  const ratio = hours.humidityRatio.subarray(fromHour, until);
  const isotherm = isothermOf(bed.medium.crop, bed.medium.isotherm);
  const rhOf = (hour: number) => vapourPressurePa(ratio[hour], pressurePa) / saturationPressurePa(plenumC[hour]);
  const moistureDb = startDb(spec, trace);
  const water = moistureDb - dryFromWet(trace.meanWb[until - 1]);
  const level = levels.filter(({ hour }) => hour <= fromHour).at(-1) ?? levels[0];
  const outdoorC = hours.tempC.subarray(fromHour, until);
  const dryKg = level.depthM * bed.medium.dryDensityKgM3;
  const days = (until - fromHour) / 24;
  const mean = (of: (hour: number) => number) => overFanHours(fan, of);
  const airKgM3 = mean((hour) => 1 / specificVolumeM3Kg(outdoorC[hour], ratio[hour], pressurePa));
  const airKg = 3600 * fanHours * level.blower.airM3M2S * airKgM3;
  return {
    why: null,
    hours: { isotherm, fan, plenumC, pressurePa, moistureDb },
    air: {
      weather,
      reached: outcome.reachedTarget,
      reachedMs: outcome.reachedTarget ? hours.startMs + 3_600_000 * outcome.reachedHour : null,
      days,
      fanHours,
      hoursPerDay: fanHours / days,
      plenumC: mean((hour) => plenumC[hour]),
      plenumRh: mean((hour) => Math.min(1, rhOf(hour))),
      plenumEmcWb: mean((hour) => balanceWb(isotherm, plenumC[hour], rhOf(hour))),
      canTake: mean((hour) => airCanTake(isotherm, plenumC[hour], ratio[hour], moistureDb, pressurePa)),
      airKgM3,
      took: (water * dryKg) / airKg,
      water,
    },
  };
}

/** Mean moisture from which the fan's time begins: as the grain rested until then, else as it was put in. */
function startDb(spec: RunSpec, { meanWb }: RunTrace): number {
  const { fromHour = 0 } = spec;
  return fromHour > 0 ? dryFromWet(meanWb[fromHour - 1]) : startMoistureDb(spec);
}

/** Held at the ends of what the isotherm tells, as the bed holds it. */
function balanceWb({ equation, a, b, c, tempRangeC }: Isotherm, tempC: number, rh: number): number {
  const t = Math.min(tempRangeC[1], Math.max(tempRangeC[0], tempC));
  const humidity = Math.min(EQUILIBRIUM_RH_RANGE[1], Math.max(EQUILIBRIUM_RH_RANGE[0], rh));
  return wetFromDry(Math.max(0, isothermMoistureDb(equation, a, b, c, t, humidity)));
}
