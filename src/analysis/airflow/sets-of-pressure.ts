import { assertRange } from '../../base/errors.ts';
import { mixtureBelow } from '../../base/stats/normal-mixture.ts';
import { airflowOfPressure } from '../../bin/airflow-of-pressure.ts';
import { RESISTANCE_CURVES, type ResistanceCurve, resistanceCurveOf } from '../../bin/resistance-curves.ts';
import { bedPressureRangePa, velocityOfPressureMS } from '../../bin/velocity-of-pressure.ts';

/** How far a set of constants is looked at beyond its airflows beside one that was measured there: errors of a pressure and of packing reach no farther. */
const NEAR: readonly [low: number, high: number] = [0.4, 2.5];

/** Less likely than this a set is left out. */
const LEAST_WITHIN = 0.05;

/** One set of constants, which holds if the airflow is among those that it was measured at. */
export interface SetOfConstants {
  set: ResistanceCurve['set'];
  /** by these constants, natural logarithm of m3/s */
  lnFlow: number;
  /** how likely the airflow is one of those that were measured */
  within: number;
}

/**
 * The sets of constants that a pressure with errors may be told by: near the end of a set's airflows its neighbour may hold as well.
 *
 * @param relSd  standard error of the airflow's logarithm by one set, > 0
 * @returns      those of `airflowOfPressure` and, if they may hold, others of the crop
 * @source       see `airflowOfPressure`
 * @valid        see `airflowOfPressure`
 */
export function setsOfPressure(
  crop: string,
  pressurePa: number,
  depthM: number,
  factor: number,
  floorAreaM2: number,
  relSd: number,
): SetOfConstants[] {
  assertRange('relSd', relSd, 1e-6, 10);
  const answers = airflowOfPressure(crop, pressurePa, depthM, factor, floorAreaM2);
  const own = resistanceCurveOf(crop).crop;
  const found = RESISTANCE_CURVES.filter((one) => one.crop === own).flatMap((curve): SetOfConstants[] => {
    const near = { ...curve, rangeMS: [curve.rangeMS[0] * NEAR[0], curve.rangeMS[1] * NEAR[1]] as const };
    const [lowPa, highPa] = bedPressureRangePa(near, depthM, factor);
    if (pressurePa < lowPa || pressurePa > highPa) return [];
    const lnVelocity = Math.log(velocityOfPressureMS(near, pressurePa, depthM, factor));
    const [low, high] = curve.rangeMS.map((end) => mixtureBelow(Math.log(end), [{ at: lnVelocity, weight: 1 }], relSd));
    return [{ set: curve.set, lnFlow: lnVelocity + Math.log(floorAreaM2), within: high - low }];
  });
  const speaking = found.filter(({ within }) => within >= LEAST_WITHIN);
  if (speaking.length > 0) return speaking;
  return answers.map(({ set, flowM3S }) => ({ set, lnFlow: Math.log(flowM3S), within: 1 }));
}
