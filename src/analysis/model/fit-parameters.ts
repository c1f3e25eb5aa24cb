import { Z95 } from '../../base/estimate.ts';
import type { BinLog } from './bin-log.ts';
import { enteringSdK } from './entering-doubt.ts';

/** What a fit may move, each in units of how far it is expected to lie off: a vector that starts at 0. */
export interface FitParameters {
  /** name, size of the unit, that below 0 where it is another, lowest and highest in units */
  list: readonly { name: string; unit: number; unitBelow?: number; low: number; high: number }[];
}

/** Airflow's factor may lie between a sixth and six times what was told before: the verdict wants less. */
const FLOW_LOG_SD = 0.5;
const FLOW_LOG_MOST = Math.log(6);
/** A cable's airflow over the bin's: farm bins lack a fifth or so where fines gather (common practice). */
const CABLE_LOG_SD = 0.2;
const CABLE_LOG_MOST = Math.log(8);
/** Shared bias of a bin's moisture sensors where none is stated, points that 95 % keep. */
const BIAS_POINTS = 0.5;
/** Part of the air at a sensor that came up along the cable from where air enters; working assumption. */
const SLIP_SD = 0.15;
const SLIP_MOST = 0.4;
const START_SD_K = 0.5;
const WALL_LOG_SD = 0.7;
/** Published specific heats of corn and wheat lie within some percent; of soybeans the default, that of D243, is the lower of two that part by a fifth. */
const HEAT_LOG_SD = 0.03;
const SOYBEAN_HEAT_LOG_SD = 0.08;
/**
 * Published thin-layer rates of one crop near outdoor temperatures lie apart by a factor of two. A layer of the bed dries by how far
 * it is from balance with the air that leaves it, a real one with that which passes: to lose 1 - exp(-n) of the way it takes the
 * rate exp(n) - 1 over n times, 2.3 at n = 1.5.
 */
const RATE_LOG = Math.log(2.3);
const RATE_LOG_SD = 0.7;
const RATE_LOG_MOST = Math.log(8);
/** How far a lot lies from a published isotherm, points of dry matter's hundred: hybrids, drying and damage. Working assumption. */
const SHIFT_DB = 0.004;
/** Grain over what cables tell of it that were read with the fan on, just started: air not yet in balance, on its way up; working assumption. */
const ABOVE_AIR_WB = 0.01;
const ABOVE_AIR_MOST = 0.05;
/** What all thermometers of a bin's cables read too much, as one reader makes it; working assumption. */
const CABLES_SD_K = 0.2;
/** Of the entering air: so many standard errors. */
const ENTERING_MOST = 3;
/** Storage rules are of one grain and its damage; others breathe a few times less or more. */
const BREATH_LOG_SD = 1.2;
const BREATH_LOG_MOST = Math.log(50);

/** Where a fit's drying rate starts, over the published one. */
export const USUAL_RATE = Math.exp(RATE_LOG);
/** How far a fit may go, over the published one. */
export const MOST_RATE = Math.exp(RATE_LOG + RATE_LOG_MOST);

export const FLOW = 0;
export const BIAS = 1;
export const START = 2;
export const WALL = 3;
export const BREATH = 4;
export const SLIP = 5;
export const HEAT = 6;
export const RATE = 7;
export const SHIFT = 8;
export const ABOVE_AIR = 9;
export const ENTERING = 10;
export const CABLES_K = 11;
export const FIRST_CABLE = 12;

/** @param baseM3S  airflow where the fit starts */
export function fitParameters(log: BinLog, baseM3S: number): FitParameters {
  const { bin, season, cables, startReads } = log;
  const biasWb = (season.sensors.moisture.biasWb ?? BIAS_POINTS / 100) / Z95;
  const enteringK = enteringSdK(log, baseM3S);
  const heatSd = bin.grain.crop === 'soybean' ? SOYBEAN_HEAT_LOG_SD : HEAT_LOG_SD;
  const within = (name: string, unit: number, most: number) => ({ name, unit, low: -most / unit, high: most / unit });
  return {
    list: [
      within('airflow', FLOW_LOG_SD, FLOW_LOG_MOST),
      within('moisture bias', biasWb, 4 * biasWb),
      within('start temperature', START_SD_K, 4 * START_SD_K),
      within('wall exchange', WALL_LOG_SD, 3 * WALL_LOG_SD),
      {
        name: 'respiration',
        unit: BREATH_LOG_SD,
        low: -BREATH_LOG_MOST / BREATH_LOG_SD,
        high: Math.log(4) / BREATH_LOG_SD,
      },
      { name: 'air along the cables', unit: SLIP_SD, low: 0, high: SLIP_MOST / SLIP_SD },
      { ...within('specific heat', heatSd, 3 * heatSd), unitBelow: HEAT_LOG_SD },
      within('drying rate', RATE_LOG_SD, RATE_LOG_MOST),
      within('shift of the isotherm', SHIFT_DB, 5 * SHIFT_DB),
      {
        ...within('moisture above that of the first air', ABOVE_AIR_WB, ABOVE_AIR_MOST),
        // Read in still air the cables tell it.
        unit: startReads.flat().some(({ moving }) => moving) ? ABOVE_AIR_WB : 0,
      },
      within('temperature of the entering air', enteringK, ENTERING_MOST * enteringK),
      within('bias of the thermometers', CABLES_SD_K, 4 * CABLES_SD_K),
      ...(cables.length < 2
        ? []
        : cables.map(({ cable }) => within(`airflow at cable ${cable}`, CABLE_LOG_SD, CABLE_LOG_MOST))),
    ],
  };
}
