import type { Bin, Season } from '../../season/season.ts';
import { statedHeaters } from '../../season/stated-heaters.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import type { FanSpans } from '../types.ts';
import { type EnteringMoistAir, enteringMoistAir, type MoistAir } from './entering-moist-air.ts';
import type { MoistAirLog } from './moist-air-log.ts';

export interface FanAir {
  main: EnteringMoistAir;
  /** with less and more warming; empty where readings tell it */
  others: readonly MoistAir[];
  /** so much less and more, K */
  offK: number;
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
  const told = (moreK: number) => enteringMoistAir(midMs, spans, plenum, weather, bin, pressurePa, moreK);
  const main = told(0);
  const heated = statedHeaters(season, bin).length > 0;
  if (main.warmingFrom !== 'stated') return { main, others: [], offK: 0, warmingKnown: true };
  const { offK } = statedWarming(bin.goal);
  if (!heated) return { main, others: [told(-offK), told(offK)], offK, warmingKnown: true };
  const lost = (values: Float64Array) => values.map((value, i) => (main.fromPlenum[i] === 1 ? value : Number.NaN));
  return { main: { ...main, tempC: lost(main.tempC), rh: lost(main.rh) }, others: [], offK: 0, warmingKnown: false };
}
