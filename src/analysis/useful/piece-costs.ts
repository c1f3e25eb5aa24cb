import { energyCost } from '../../money/energy-cost.ts';
import type { RateBreaks } from '../../money/rate-breaks.ts';
import type { Season } from '../../season/season.ts';
import { binsOnFan } from '../energy/bins-on-fan.ts';
import { fanRelSd, runningPowerW } from '../energy/fan-cost.ts';
import { tariffBills } from '../energy/tariff-bill.ts';
import { type BinFan, FAN_UNKNOWN, type FanSeason, type FanSpans } from '../types.ts';
import type { HourPieces } from './hour-pieces.ts';
import { sumOf } from './hour-sums.ts';

/** What the energy of each piece cost the bin, at the price of its own time. */
export interface PieceCosts {
  /** [pieces], money */
  cost: Float64Array;
  /** [pieces], what fans whose log is silent there would have added, money */
  more: Float64Array;
  /** relative standard error that all pieces share: the energy's */
  relSd: number;
  /** why there is no price; null where there is one */
  why: string | null;
}

/** @param fans  all fans of the season, as they share tariffs */
export function pieceCosts(season: Season, fans: readonly FanSeason[], fan: BinFan, pieces: HourPieces): PieceCosts {
  const cost = new Float64Array(pieces.midMs.length);
  const more = new Float64Array(pieces.midMs.length);
  const bills = tariffBills(season, fans);
  let variance = 0;
  for (const own of fan.fans) {
    const stated = season.fans.find((one) => one.id === own.fanId);
    const bill = stated === undefined || stated.tariffId === null ? undefined : bills.get(stated.tariffId);
    if (stated === undefined || bill === undefined)
      return { cost, more, relSd: 0, why: `Fan ${own.fanId} has no tariff, so its hours have no price.` };
    const part = 1 / binsOnFan(season, own.fanId);
    const runningW = runningPowerW(stated, own);
    const silentW = Float64Array.from(own.spans.state, (state) => (state === FAN_UNKNOWN ? runningW : 0));
    const spent = addCosts(cost, pieces, own.spans, bill.rates, part);
    addCosts(more, pieces, { ...own.spans, powerW: silentW }, bill.rates, part);
    variance += (spent * fanRelSd(own)) ** 2;
  }
  const all = sumOf(cost);
  const why = Number.isNaN(all + sumOf(more)) ? 'The tariff has no energy price for part of the time.' : null;
  return { cost, more, relSd: all > 0 ? Math.sqrt(variance) / all : 0, why };
}

/** Add to each piece its part of what the power cost in it. @returns what was added, money */
function addCosts(
  into: Float64Array,
  pieces: HourPieces,
  { startMs, endMs, powerW }: FanSpans,
  rates: RateBreaks,
  part: number,
): number {
  let span = 0;
  let added = 0;
  for (let i = 0; i < into.length; i++) {
    while (span < startMs.length && endMs[span] <= pieces.fromMs[i]) span += 1;
    for (let k = span; k < startMs.length && startMs[k] < pieces.toMs[i]; k++) {
      if (!(powerW[k] > 0)) continue;
      const one = {
        startMs: startMs.subarray(k, k + 1),
        endMs: endMs.subarray(k, k + 1),
        powerW: powerW.subarray(k, k + 1),
      };
      const used = part * energyCost(one, rates, pieces.fromMs[i], pieces.toMs[i]).cost;
      into[i] += used;
      added += used;
    }
  }
  return added;
}
