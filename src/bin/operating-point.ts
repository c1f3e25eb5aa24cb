import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import { resistancePaM } from './airflow-resistance.ts';
import { assertFanCurve, type FanCurve, fanFlowM3S, pressureRangePa } from './fan-curve.ts';
import type { ResistanceCurve } from './resistance-curves.ts';

/** A levelled bed on a full floor, as its fans meet it. */
export interface Bed {
  curve: ResistanceCurve;
  floorAreaM2: number;
  depthM: number;
  /** resistance multiplier for packing and fines */
  factor: number;
}

/** Where fans and bed balance, or a sentence why no such point is known. */
export type OperatingPoint =
  | {
      ok: true;
      pressurePa: number;
      flowM3S: number;
      /** of each fan, in the order given */
      fanFlowsM3S: number[];
      velocityMS: number;
      /** false: the bed's resistance was carried beyond the airflows that were measured */
      inMeasuredRange: boolean;
    }
  | { ok: false; why: string };

/**
 * Airflow and static pressure of fans that blow in parallel into one plenum. All meet one pressure, their airflows add up.
 * Solved by halving on the pressure: with it the fans' air falls and so does the bed's need, so there is one answer or none.
 *
 * @param fans  one curve each, at least one
 * @param bed   floor area 0.1 to 1e4 m2, depth 0.1 to 60 m, factor 0.5 to 10
 * @returns     the point, or why there is none within the pressures that all curves cover
 * @source      of the bed: `bed.curve.sourceKey`
 * @valid       throws RangeError on a bed or curve that cannot be
 */
export function operatingPoint(fans: readonly FanCurve[], bed: Bed): OperatingPoint {
  assertRange('floorAreaM2', bed.floorAreaM2, 0.1, 1e4);
  assertRange('depthM', bed.depthM, 0.1, 60);
  assertRange('factor', bed.factor, 0.5, 10);
  for (const curve of fans) assertFanCurve(curve);
  if (fans.length === 0) return { ok: false, why: 'There is no fan curve.' };
  const low = Math.max(...fans.map((curve) => pressureRangePa(curve)[0]));
  const high = Math.min(...fans.map((curve) => pressureRangePa(curve)[1]));
  if (!(low < high)) return { ok: false, why: 'The fan curves have no static pressure in common.' };
  const flowAt = (pressurePa: number) => fans.reduce((sum, curve) => sum + fanFlowM3S(curve, pressurePa), 0);
  const needAt = (pressurePa: number) =>
    bed.factor * bed.depthM * resistancePaM(bed.curve.a, bed.curve.b, flowAt(pressurePa) / bed.floorAreaM2);
  const whole = (pressurePa: number) => `${Math.round(pressurePa)} Pa`;
  if (needAt(low) < low) {
    return { ok: false, why: `The bed asks for less than ${whole(low)}, where a fan curve begins.` };
  }
  if (needAt(high) > high) {
    return { ok: false, why: `The bed asks for more than ${whole(high)}, where a fan curve ends.` };
  }
  const pressurePa = halve(low, high, (middle) => needAt(middle) > middle, 80);
  const flowM3S = flowAt(pressurePa);
  const velocityMS = flowM3S / bed.floorAreaM2;
  const [least, most] = bed.curve.rangeMS;
  return {
    ok: true,
    pressurePa,
    flowM3S,
    fanFlowsM3S: fans.map((curve) => fanFlowM3S(curve, pressurePa)),
    velocityMS,
    inMeasuredRange: velocityMS >= least && velocityMS <= most,
  };
}
