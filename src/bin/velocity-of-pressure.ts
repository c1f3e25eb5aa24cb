import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import { resistancePaM } from './airflow-resistance.ts';
import type { ResistanceCurve } from './resistance-curves.ts';

/**
 * Static pressures that belong to the airflows for which a set of constants was measured.
 *
 * @param curve   from `resistanceCurveOf`
 * @param depthM  m, 0.1 to 60
 * @param factor  multiplier for packing and fines, 0.5 to 10
 * @returns       Pa
 * @valid         throws RangeError outside
 */
export function bedPressureRangePa(
  curve: ResistanceCurve,
  depthM: number,
  factor: number,
): readonly [low: number, high: number] {
  assertRange('depthM', depthM, 0.1, 60);
  assertRange('factor', factor, 0.5, 10);
  const pressureAt = (velocityMS: number) => factor * depthM * resistancePaM(curve.a, curve.b, velocityMS);
  return [pressureAt(curve.rangeMS[0]), pressureAt(curve.rangeMS[1])];
}

/**
 * Superficial velocity that a static pressure drives through a levelled bed: `bedPressurePa` solved for the velocity,
 * by halving within the airflows that were measured.
 *
 * @param curve       from `resistanceCurveOf`
 * @param pressurePa  between plenum and headspace, Pa
 * @param depthM      m, 0.1 to 60
 * @param factor      multiplier for packing and fines, 0.5 to 10
 * @returns           m/s
 * @source            of the constants: `curve.sourceKey`
 * @valid             throws RangeError where the velocity would lie outside `curve.rangeMS`; the message tells the pressures that are allowed
 */
export function velocityOfPressureMS(
  curve: ResistanceCurve,
  pressurePa: number,
  depthM: number,
  factor: number,
): number {
  assertRange('pressurePa', pressurePa, ...bedPressureRangePa(curve, depthM, factor));
  const pressureAt = (velocityMS: number) => factor * depthM * resistancePaM(curve.a, curve.b, velocityMS);
  return halve(...curve.rangeMS, (middle) => pressureAt(middle) < pressurePa);
}
