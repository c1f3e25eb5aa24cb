import { type Isotherm, isothermOf, isothermsOf } from '../grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLinesOf } from '../grain/specific-heat.ts';
import { specificHeatSpreadJKgK } from '../grain/specific-heat-spread.ts';
import {
  airVolumeBehindM3Kg,
  type FrontRatios,
  frontRatios,
  type TemperatureFront,
  velocityOfFrontMS,
} from './front-speed.ts';

/** A front in a crop, without the choices that move its speed. */
export type FrontOfCrop = Omit<TemperatureFront, 'isotherm' | 'heatJKgK'>;

export type FrontPart = Exclude<keyof FrontRatios, 'moistureChangeWb'>;

/** Ratio of a part of a front with the crop's defaults, and how far other published constants move it. */
export interface FrontSpread {
  value: number;
  low: number;
  high: number;
  /** isotherms by name that were asked; those that do not reach the front's temperatures are left out */
  isotherms: readonly string[];
  /** the heats that were taken, J/(kg K); the first with the value */
  heatsJKgK: readonly number[];
}

/**
 * How sure the speed of a front is for a known airflow, or the airflow for a known speed: the ratio by every isotherm and
 * specific heat that is published for the crop. A crop without a specific heat of its own takes the bounds of all crops, and
 * their middle for the value.
 *
 * @param crop   id of the crop table
 * @param front  as `TemperatureFront`; moisture 0.09 to 0.2 where the bounds of all crops are taken
 * @param part   which part of the front: `middle` is what an arrival at half of the change tells
 * @returns      kg dry grain per kg dry air; the ends of the constants, not an interval of errors: those of moisture, density,
 *               uneven air and the reading of the front come on top
 * @source       of the constants: the isotherms' and the lines' own
 * @valid        throws RangeError outside and when the default isotherm does not reach the temperatures
 */
export function frontRatioSpread(crop: string, front: FrontOfCrop, part: FrontPart = 'middle'): FrontSpread {
  const own = isothermOf(crop);
  const heatsJKgK = heatsOf(crop, front.moistureWb);
  const reaches = ({ tempRangeC: [low, high] }: Isotherm) =>
    Math.min(front.aheadC, front.behindC) >= low && Math.max(front.aheadC, front.behindC) <= high;
  const isotherms = [own, ...isothermsOf(crop).filter((one) => one !== own && reaches(one))];
  const ratioOf = (isotherm: Isotherm, heatJKgK: number) => frontRatios({ ...front, isotherm, heatJKgK })[part];
  const all = isotherms.flatMap((isotherm) => heatsJKgK.map((heat) => ratioOf(isotherm, heat)));
  return {
    value: ratioOf(own, heatsJKgK[0]),
    low: Math.min(...all),
    high: Math.max(...all),
    isotherms: isotherms.map(({ name }) => name),
    heatsJKgK,
  };
}

/** Airflow over the floor that a front tells, and how far the choice of constants moves it. */
export interface FrontAirflow {
  velocityMS: number;
  lowMS: number;
  highMS: number;
}

/**
 * Airflow over the floor from the speed of a front, with what the published constants leave open.
 *
 * @param crop           id of the crop table
 * @param front          as `frontRatioSpread` takes it
 * @param speedMS        of the part of the front, m/s, 0 to 0.01
 * @param dryMatterKgM3  in the bed, kg/m3, 100 to 1100
 * @param part           which part was timed; `middle`
 * @returns              m/s; times the floor area the airflow. The speed's own error, which is its relative part of the answer,
 *                       comes on top
 * @source               as `frontRatioSpread`
 * @valid                throws RangeError outside
 */
export function airflowOfFront(
  crop: string,
  front: FrontOfCrop,
  speedMS: number,
  dryMatterKgM3: number,
  part: FrontPart = 'middle',
): FrontAirflow {
  const { value, low, high, heatsJKgK } = frontRatioSpread(crop, front, part);
  const volume = airVolumeBehindM3Kg({ ...front, isotherm: isothermOf(crop), heatJKgK: heatsJKgK[0] });
  const of = (ratio: number) => velocityOfFrontMS(ratio, speedMS, volume, dryMatterKgM3);
  return { velocityMS: of(value), lowMS: of(high), highMS: of(low) };
}

function heatsOf(crop: string, moistureWb: number): number[] {
  const lines = specificHeatLinesOf(crop);
  if (lines.length > 0) return lines.map((line) => specificHeatJKgK(line, moistureWb));
  const [low, high] = specificHeatSpreadJKgK(moistureWb);
  return [(low + high) / 2, low, high];
}
