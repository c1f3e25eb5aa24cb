import { assertRange } from '../base/errors.ts';
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
  const [low, high] = standard.rangeMS;
  return [answer({ ...standard, rangeMS: [low * BEYOND[0], high * BEYOND[1]] }, false)];
}
