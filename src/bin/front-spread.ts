import { type Isotherm, isothermOf, isothermsOf } from '../grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLinesOf } from '../grain/specific-heat.ts';
import { specificHeatSpreadJKgK } from '../grain/specific-heat-spread.ts';
import { type FrontRatios, frontRatios, type TemperatureFront } from './front-speed.ts';

/** A front in a crop, without the choices that move its speed. */
type FrontOfCrop = Omit<TemperatureFront, 'isotherm' | 'heatJKgK'>;

type FrontPart = Exclude<keyof FrontRatios, 'moistureChangeWb'>;

/** Ratio of a part of a front with the crop's defaults, and how far other published constants move it. */
export interface FrontSpread {
  value: number;
  low: number;
  high: number;
  /** isotherms by name that were asked; those that do not reach the front's temperatures are left out */
  isotherms: readonly string[];
  /** the heats that were taken, J/(kg K); the first with the value */
  heatsJKgK: readonly number[];
  /** [as heatsJKgK][as isotherms] */
  byHeat: readonly (readonly number[])[];
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
  const byHeat = heatsJKgK.map((heat) => isotherms.map((isotherm) => ratioOf(isotherm, heat)));
  return {
    value: ratioOf(own, heatsJKgK[0]),
    low: Math.min(...byHeat.flat()),
    high: Math.max(...byHeat.flat()),
    isotherms: isotherms.map(({ name }) => name),
    heatsJKgK,
    byHeat,
  };
}

function heatsOf(crop: string, moistureWb: number): number[] {
  const lines = specificHeatLinesOf(crop);
  if (lines.length > 0) return lines.map((line) => specificHeatJKgK(line, moistureWb));
  const [low, high] = specificHeatSpreadJKgK(moistureWb);
  return [(low + high) / 2, low, high];
}
