import { assertRange } from '../base/errors.ts';
import type { Fan } from './fan.ts';

/** Static pressure (Pa) to airflow (m3/s), rising pressure, as `Fan.curve` holds it. */
export type FanCurve = NonNullable<Fan['curve']>;

/** Pressures between which a curve tells the airflow, Pa. */
export function pressureRangePa(curve: FanCurve): readonly [low: number, high: number] {
  return [curve[0][0], curve[curve.length - 1][0]];
}

/**
 * Whether a curve can be used: two points or more, pressures rise, airflow is not below 0 and never rises with pressure.
 *
 * @throws RangeError that names the point
 */
export function assertFanCurve(curve: FanCurve): void {
  if (curve.length < 2) throw new RangeError(`a fan curve has ${curve.length} points; it takes two or more.`);
  curve.forEach(([pressurePa, flowM3S], i) => {
    assertRange(`fan curve point ${i + 1} pressurePa`, pressurePa, i === 0 ? -1e4 : curve[i - 1][0] + 1e-9, 1e5);
    assertRange(`fan curve point ${i + 1} flowM3S`, flowM3S, 0, i === 0 ? 1e4 : curve[i - 1][1]);
  });
}

/**
 * Airflow of a fan at a static pressure, straight between the points.
 *
 * @param curve       checked by `assertFanCurve`
 * @param pressurePa  within the curve's own pressures
 * @returns           m3/s
 * @source            of the points: who made the fan
 * @valid             throws RangeError outside: beyond its points a curve is not known
 */
export function fanFlowM3S(curve: FanCurve, pressurePa: number): number {
  assertRange('pressurePa', pressurePa, ...pressureRangePa(curve));
  let i = 1;
  while (i < curve.length - 1 && curve[i][0] < pressurePa) i++;
  const [p0, q0] = curve[i - 1];
  const [p1, q1] = curve[i];
  return q0 + ((q1 - q0) * (pressurePa - p0)) / (p1 - p0);
}
