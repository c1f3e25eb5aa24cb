import { assertRange } from '../base/errors.ts';
import type { ResistanceCurve } from './resistance-curves.ts';

/**
 * Pressure that air loses per metre of grain: the kernel, no checks.
 *
 * @param a           constant, Pa s2/m3
 * @param b           constant, m2 s/m3
 * @param velocityMS  superficial velocity (airflow over floor area), m/s, >= 0
 * @returns           Pa/m; 0 at rest
 * @source            asae-d272-3, eq. 1
 */
export function resistancePaM(a: number, b: number, velocityMS: number): number {
  return velocityMS === 0 ? 0 : (a * velocityMS * velocityMS) / Math.log1p(b * velocityMS);
}

/**
 * Pressure per metre of clean, loose, dry grain, within the airflows that were measured.
 *
 * @param curve       from `resistanceCurveOf`
 * @param velocityMS  superficial velocity, m/s, within `curve.rangeMS`
 * @returns           Pa/m
 * @source            of the constants: `curve.sourceKey`, eq. 1
 * @valid             throws RangeError outside; for less air take the `low airflow` set where there is one
 */
export function airflowResistancePaM(curve: ResistanceCurve, velocityMS: number): number {
  assertRange('velocityMS', velocityMS, ...curve.rangeMS);
  return resistancePaM(curve.a, curve.b, velocityMS);
}

/**
 * Pressure between plenum and headspace for a levelled bed on a full floor.
 *
 * @param curve       from `resistanceCurveOf`
 * @param velocityMS  superficial velocity, m/s, within `curve.rangeMS`
 * @param depthM      of the grain, m, 0 to 60
 * @param factor      multiplier for packing, fines and damp grain, 0.5 to 10
 * @returns           Pa
 * @source            of the constants: `curve.sourceKey`
 * @valid             throws RangeError outside
 */
export function bedPressurePa(curve: ResistanceCurve, velocityMS: number, depthM: number, factor: number): number {
  assertRange('depthM', depthM, 0, 60);
  assertRange('factor', factor, 0.5, 10);
  return factor * depthM * airflowResistancePaM(curve, velocityMS);
}
