import { assertRange } from '../base/errors.ts';
import { mixtureBelow } from '../base/stats/normal-mixture.ts';
import { RESISTANCE_CURVES, type ResistanceCurve, resistanceCurveOf } from './resistance-curves.ts';
import { bedPressureRangePa, velocityOfPressureMS } from './velocity-of-pressure.ts';

/** Airflow through a levelled bed by one set of resistance constants. */
export interface AirflowAnswer {
  set: ResistanceCurve['set'];
  flowM3S: number;
  velocityMS: number;
  /** false: the constants were carried beyond the airflows that were measured, as canola's and sunflower's are at aeration rates */
  inMeasuredRange: boolean;
}

/** How far constants are carried beyond the airflows that were measured, where none speaks within: a tenth of the least, twice the most. */
const BEYOND: readonly [low: number, high: number] = [0.1, 2];

/**
 * Airflow that a static pressure drives through a bed, by each set of constants of the crop that was measured at such airflows:
 * corn and wheat have a second one for aeration rates, and where both speak they may part by half. Where none was measured at
 * such airflows, the standard one is carried a little beyond, and the answer says so.
 *
 * @param crop         id of the crop table
 * @param pressurePa   between plenum and headspace, Pa, > 0
 * @param depthM       levelled, m, 0.1 to 60
 * @param factor       multiplier for packing and fines, 0.5 to 10
 * @param floorAreaM2  0.1 to 1e4 m2
 * @returns            the standard set first; never empty
 * @source             of the constants: `sourceKey` of the set
 * @valid              throws RangeError beyond; the message tells the pressures that are allowed
 */
export function airflowOfPressure(
  crop: string,
  pressurePa: number,
  depthM: number,
  factor: number,
  floorAreaM2: number,
): AirflowAnswer[] {
  assertRange('floorAreaM2', floorAreaM2, 0.1, 1e4);
  const standard = resistanceCurveOf(crop);
  const reaching = RESISTANCE_CURVES.filter((one) => {
    const [low, high] = bedPressureRangePa(one, depthM, factor);
    return one.crop === standard.crop && pressurePa >= low && pressurePa <= high;
  });
  const answer = (curve: ResistanceCurve, inMeasuredRange: boolean): AirflowAnswer => {
    const velocityMS = velocityOfPressureMS(curve, pressurePa, depthM, factor);
    return { set: curve.set, velocityMS, flowM3S: velocityMS * floorAreaM2, inMeasuredRange };
  };
  if (reaching.length > 0) return reaching.map((curve) => answer(curve, true));
  return [answer(carriedBeyond(standard, BEYOND), false)];
}

/** How far a set of constants is looked at beyond its airflows beside one that was measured there: errors of a pressure and of packing reach no farther. */
const NEAR: readonly [low: number, high: number] = [0.4, 2.5];

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
    const near = carriedBeyond(curve, NEAR);
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

/** Less likely than this a set is left out. */
const LEAST_WITHIN = 0.05;

function carriedBeyond(curve: ResistanceCurve, [below, above]: readonly [number, number]): ResistanceCurve {
  const [low, high] = curve.rangeMS;
  return { ...curve, rangeMS: [low * below, high * above] };
}
