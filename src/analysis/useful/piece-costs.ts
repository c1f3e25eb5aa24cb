import { energyCost } from '../../money/energy-cost.ts';
import type { Season } from '../../season/season.ts';
import { binsOnFan } from '../energy/bins-on-fan.ts';
import { tariffBills } from '../energy/tariff-bill.ts';
import type { BinFan, FanSeason } from '../types.ts';
import type { HourPieces } from './hour-pieces.ts';

/** What the energy of each piece cost the bin, at the price of its own time. */
export interface PieceCosts {
  /** [pieces], money */
  cost: Float64Array;
  /** relative standard error that all pieces share: the energy's */
  relSd: number;
  /** why there is no price; null where there is one */
  why: string | null;
}

/** @param fans  all fans of the season, as they share tariffs */
export function pieceCosts(season: Season, fans: readonly FanSeason[], fan: BinFan, pieces: HourPieces): PieceCosts {
  const cost = new Float64Array(pieces.midMs.length);
  const bills = tariffBills(season, fans);
  let variance = 0;
  for (const own of fan.fans) {
    const tariffId = season.fans.find((one) => one.id === own.fanId)?.tariffId ?? null;
    const bill = tariffId === null ? undefined : bills.get(tariffId);
    if (bill === undefined)
      return { cost, relSd: 0, why: `Fan ${own.fanId} has no tariff, so its hours have no price.` };
    const part = 1 / binsOnFan(season, own.fanId);
    const { startMs, endMs, powerW } = own.spans;
    let span = 0;
    let spent = 0;
    for (let i = 0; i < cost.length; i++) {
      while (span < startMs.length && endMs[span] <= pieces.fromMs[i]) span += 1;
      for (let k = span; k < startMs.length && startMs[k] < pieces.toMs[i]; k++) {
        if (!(powerW[k] > 0)) continue;
        const one = {
          startMs: startMs.subarray(k, k + 1),
          endMs: endMs.subarray(k, k + 1),
          powerW: powerW.subarray(k, k + 1),
        };
        const used = part * energyCost(one, bill.rates, pieces.fromMs[i], pieces.toMs[i]).cost;
        cost[i] += used;
        spent += used;
      }
    }
    variance += (spent * own.energyRelSd) ** 2;
  }
  const all = cost.reduce((sum, one) => sum + one, 0);
  const why = Number.isNaN(all) ? 'The tariff has no energy price for part of the time.' : null;
  return { cost, relSd: all > 0 ? Math.sqrt(variance) / all : 0, why };
}
