import { type Estimate, Z90 } from '../../base/estimate.ts';
import { mixtureBelow } from '../../base/stats/normal-mixture.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { RESISTANCE_CURVES } from '../../bin/resistance-curves.ts';
import type { Bin } from '../../season/season.ts';
import { DEFAULT_MOTOR_EFFICIENCY } from '../fan/nominal-power.ts';
import type { FanSeason } from '../types.ts';
import { type PressureStage, resistanceCurve } from './airflow-by-pressure.ts';
import { packingRange } from './packing-range.ts';

/** How well an airflow goes with something else that was measured: its likelihood, 0 to 1. */
export interface Bearing {
  /** as `Against it speaks ...` goes on */
  name: string;
  at: (flowM3S: number) => number;
}

/** Farm fans at work turn 30 to 65 % of their shaft power into air power (common practice); none much more, sd of the logarithm. */
const MOST_EFFICIENCY = 0.65;
const EFFICIENCY_SD = 0.1;
/** A logged static pressure (sd of the logarithm), as for the airflow by pressure. */
const PRESSURE_SD = 0.04;

/** The static pressure: its airflow with its own interval, which may be lopsided. A floor that lets air through in part is not counted there. */
export function pressureBearing(bin: Pick<Bin, 'openFloor'>, byPressure: Estimate): Bearing[] {
  const { value, interval } = byPressure;
  if (value === null || interval === null || bin.openFloor < 1) return [];
  const [below, above] = interval.map((end) => Math.abs(Math.log(end / value)) / Z90);
  const at = (flowM3S: number) => {
    const off = Math.log(flowM3S / value);
    return Math.exp(-((off / (off < 0 ? below : above)) ** 2) / 2);
  };
  return [{ name: 'the static pressure', at }];
}

/**
 * The fans' power: no fan drives more air against its pressure, logged or by the resistance of the grain, than its power allows.
 * That a fan drives less says nothing: many are too large for their grain.
 *
 * @param fans   those that ran, as one set
 * @param stage  the logged pressure with the same fans; null where there is none
 */
export function powerBearing(
  bin: Bin,
  fans: readonly Pick<FanSeason, 'energyKwh' | 'onHours' | 'energyRelSd'>[],
  depthM: number,
  stage: Pick<PressureStage, 'pressurePa'> | null,
): Bearing[] {
  const electricW = fans.reduce((sum, fan) => sum + (1000 * fan.energyKwh) / fan.onHours, 0);
  const crop = resistanceCurve(bin.grain.crop)?.crop;
  const curves = RESISTANCE_CURVES.filter((one) => one.crop === crop);
  if (!(electricW > 0) || (stage === null && curves.length === 0)) return [];
  const shaftW = DEFAULT_MOTOR_EFFICIENCY * electricW;
  const powerSd = Math.max(...fans.map((fan) => fan.energyRelSd));
  const areaM2 = (Math.PI / 4) * bin.diameterM ** 2;
  const [loose, tight] = packingRange(bin);
  const packingSd = Math.log(tight / loose) / 2 / Z90;
  const fits = (flowM3S: number, pressurePa: number, pressureSd: number) => {
    const over = Math.log((flowM3S * pressurePa) / shaftW / MOST_EFFICIENCY);
    return 1 - mixtureBelow(over, [{ at: 0, weight: 1 }], Math.hypot(EFFICIENCY_SD, powerSd, pressureSd));
  };
  const at = (flowM3S: number) => {
    if (stage !== null) return fits(flowM3S, stage.pressurePa, PRESSURE_SD);
    const velocityMS = flowM3S / areaM2;
    // Sets of constants part at aeration rates, and none is the likelier one.
    const inRange = curves.filter(({ rangeMS: [low, high] }) => velocityMS >= low && velocityMS <= high);
    const each = (inRange.length > 0 ? inRange : curves.slice(0, 1)).map(({ a, b }) =>
      fits(flowM3S, bin.airflowFactor * depthM * resistancePaM(a, b, velocityMS), packingSd),
    );
    return each.reduce((sum, one) => sum + one, 0) / each.length;
  };
  return [{ name: 'the power of the fans, which is too little for it', at }];
}
