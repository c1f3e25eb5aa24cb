import type { Bin, Season } from '../../season/season.ts';
import type { FanSpans } from '../types.ts';
import { type EnteringMoistAir, enteringMoistAir, type MoistAir } from './entering-moist-air.ts';
import type { MoistAirLog } from './moist-air-log.ts';

/** Where only a stated figure tells the fan's warming, it may be this much off, K: published figures run from 1.7 to 2.8 K, small fans warm less. */
export const WARMING_OFF_K = 1;

export interface FanAir {
  main: EnteringMoistAir;
  /** with less and more warming; empty where readings tell it */
  others: readonly MoistAir[];
  /** false: a heater ran and no plenum reading tells by how much the air was warmed */
  warmingKnown: boolean;
}

/** The air that entered the grain in each piece, and how it would have been with the fan's warming a little off. */
export function fanAir(
  bin: Bin,
  season: Season,
  spans: FanSpans,
  midMs: Float64Array,
  plenum: MoistAirLog,
  weather: MoistAirLog,
  pressurePa: number,
): FanAir {
  const told = (moreK: number) => enteringMoistAir(midMs, spans, plenum, weather, bin.air, pressurePa, moreK);
  const main = told(0);
  const heated = season.fans.some((fan) => bin.fanIds.includes(fan.id) && fan.heater !== null);
  if (main.warmingFrom !== 'stated') return { main, others: [], warmingKnown: true };
  if (!heated) return { main, others: [told(-WARMING_OFF_K), told(WARMING_OFF_K)], warmingKnown: true };
  const lost = (values: Float64Array) => values.map((value, i) => (main.fromPlenum[i] === 1 ? value : Number.NaN));
  return { main: { ...main, tempC: lost(main.tempC), rh: lost(main.rh) }, others: [], warmingKnown: false };
}
