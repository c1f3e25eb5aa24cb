import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import { resistancePaM } from './airflow-resistance.ts';
import type { ResistanceCurve } from './resistance-curves.ts';

/**
 * Superficial velocity that a fan's power drives through a levelled bed: the velocity at which pressure times airflow over the
 * fan's efficiency takes the power, by halving within the airflows that were measured.
 *
 * @param curve        from `resistanceCurveOf`
 * @param powerWM2     shaft power for each m2 of floor, W/m2
 * @param depthM       m, 0.1 to 60
 * @param factor       multiplier for packing and fines, 0.5 to 10
 * @param efficiency   air power over shaft power, fraction, 0.05 to 1
 * @returns            m/s
 * @source             of the constants: `curve.sourceKey`; power is pressure times volume flow
 * @valid              throws RangeError where the velocity would lie outside `curve.rangeMS`; the message tells the powers that are allowed
 */
export function velocityOfPowerMS(
  curve: ResistanceCurve,
  powerWM2: number,
  depthM: number,
  factor: number,
  efficiency: number,
): number {
  assertRange('depthM', depthM, 0.1, 60);
  assertRange('factor', factor, 0.5, 10);
  assertRange('efficiency', efficiency, 0.05, 1);
  const powerAt = (velocityMS: number) =>
    (velocityMS * factor * depthM * resistancePaM(curve.a, curve.b, velocityMS)) / efficiency;
  const [low, high] = curve.rangeMS;
  assertRange('powerWM2', powerWM2, powerAt(low), powerAt(high));
  return halve(low, high, (middle) => powerAt(middle) < powerWM2);
}
