import { localDayStart, type Zone } from '../base/zone.ts';
import { DEMAND_MS, SAME_PEAK } from './demand.ts';
import { localMoment } from './local-time.ts';
import type { DemandRule } from './tariff.ts';
import { whenHolds } from './when-holds.ts';

/** What one demand rule bills over a bill's own time, which need not be a calendar month. */
export interface PeriodDemand {
  peakKw: number;
  /** after the ratchet over the eleven months before the bill's first moment */
  billedKw: number;
  cost: number;
  /** highest of the eleven months before, kW */
  beforeKw: number;
  /** share of `beforeKw` that is billed at least; 0 where the rule has no ratchet or never holds in the bill's time */
  ratchet: number;
  /** each part's share of the quarter hour that set the bill, [parts] */
  shares: readonly number[];
}

/**
 * Bill a demand rule for one reading of the meter to the next.
 *
 * @param means  of each part, mean power by clock-aligned quarter hour (`quarterMeans`), kW
 */
export function periodDemand(
  rule: DemandRule,
  zone: Zone,
  means: readonly ReadonlyMap<number, number>[],
  fromMs: number,
  toMs: number,
): PeriodDemand {
  const own = highest(rule, zone, means, fromMs, toMs);
  const before = highest(rule, zone, means, elevenMonthsBefore(zone, fromMs), fromMs);
  const ratchet = own.everHeld ? (rule.ratchet ?? 0) : 0;
  const floor = ratchet * before.kw;
  const billedKw = Math.max(own.kw, floor);
  const setBy = floor > own.kw ? before : own;
  return {
    peakKw: own.kw,
    billedKw,
    cost: billedKw * rule.pricePerKw,
    beforeKw: before.kw,
    ratchet,
    shares: means.map((part) =>
      setBy.kw > 0 && setBy.quarter !== null ? (part.get(setBy.quarter) ?? 0) / setBy.kw : 0,
    ),
  };
}

/** Where the ratchet of a bill begins to look: eleven calendar months before its first moment's day. */
export function elevenMonthsBefore(zone: Zone, fromMs: number): number {
  const { year, month, day } = localMoment(zone, fromMs);
  return localDayStart(zone, year, month - 11, day);
}

function highest(
  rule: DemandRule,
  zone: Zone,
  means: readonly ReadonlyMap<number, number>[],
  fromMs: number,
  toMs: number,
): { kw: number; quarter: number | null; everHeld: boolean } {
  let kw = 0;
  let quarter: number | null = null;
  let everHeld = false;
  for (let q = Math.ceil(fromMs / DEMAND_MS); q * DEMAND_MS < toMs; q++) {
    const sum = means.reduce((all, part) => all + (part.get(q) ?? 0), 0);
    const higher = sum > kw * (1 + SAME_PEAK);
    if (everHeld && !higher) continue;
    if (!whenHolds(rule.when, localMoment(zone, q * DEMAND_MS))) continue;
    everHeld = true;
    if (higher) {
      kw = sum;
      quarter = q;
    }
  }
  return { kw, quarter, everHeld };
}
