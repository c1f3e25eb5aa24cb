import { bedPressurePa } from '../../sample/airflow.ts';
import type { Resistance } from './draw-resistance.ts';
import type { BinDraw } from './plan.ts';

const CFM_PER_BU = 0.3048 ** 3 / 60 / (1.2445 * 0.3048 ** 3); // m3/s per m3 of grain
const HORSEPOWERS = [0.75, 1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60];

/** Superficial speed, m/s, of a flow in cfm per bushel. */
export const speedOf = (cfm: number, depthM: number): number => cfm * CFM_PER_BU * depthM;

/** No farm buys the fan that would blow so deep a bin at more than some 5 in. of water: the airflow that it buys then. */
export function blowable(cfm: number, depthM: number, resistance: Resistance): number {
  let flow = cfm;
  while (bedPressurePa(speedOf(flow, depthM), depthM, resistance) > 1250) flow *= 0.95;
  return flow;
}

/** The next nameplate above what the air needs at a fan's usual half of efficiency. */
export function horsepower(cfm: number, diameterM: number, depthM: number, resistance: Resistance) {
  const flow = (speedOf(cfm, depthM) * Math.PI * diameterM ** 2) / 4;
  const pressure = bedPressurePa(speedOf(cfm, depthM), depthM, resistance) + 60;
  const needed = (flow * pressure) / 0.5 / 745.7;
  return HORSEPOWERS.find((hp) => hp >= needed) ?? Math.ceil(needed / 10) * 10;
}

/** The flow that a plan's fan moves, m3/s. */
export const flowOf = (bin: BinDraw): number => (speedOf(bin.cfmPerBu, bin.depthM) * Math.PI * bin.diameterM ** 2) / 4;
