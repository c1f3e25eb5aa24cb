import { bedPressurePa } from '../../sample/airflow.ts';
import type { BinDraw } from './plan.ts';

const CFM_PER_BU = 0.3048 ** 3 / 60 / (1.2445 * 0.3048 ** 3); // m3/s per m3 of grain
const HORSEPOWERS = [0.75, 1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60];

/** No farm buys the fan that would blow so deep a bin at more than some 5 in. of water: the airflow that it buys then. */
export function blowable(cfm: number, depthM: number, resistance: { a: number; b: number; packing: number }): number {
  let flow = cfm;
  while (bedPressurePa(flow * CFM_PER_BU * depthM, depthM, resistance) > 1250) flow *= 0.95;
  return flow;
}

/** The next nameplate above what the air needs at a fan's usual half of efficiency. */
export function horsepower(
  cfm: number,
  diameterM: number,
  depthM: number,
  resistance: { a: number; b: number; packing: number },
) {
  const flow = (cfm * CFM_PER_BU * depthM * (Math.PI * diameterM ** 2)) / 4;
  const pressure = bedPressurePa(cfm * CFM_PER_BU * depthM, depthM, resistance) + 60;
  const needed = (flow * pressure) / 0.5 / 745.7;
  return HORSEPOWERS.find((hp) => hp >= needed) ?? Math.ceil(needed / 10) * 10;
}

/** The flow that a plan's fan moves, m3/s. */
export const flowOf = (bin: BinDraw): number =>
  (bin.cfmPerBu * CFM_PER_BU * bin.depthM * Math.PI * bin.diameterM ** 2) / 4;
