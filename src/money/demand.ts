import type { Zone } from '../base/zone.ts';
import type { PowerSpans } from './energy-cost.ts';
import { localMoment, localMonths } from './local-time.ts';
import type { DemandRule } from './tariff.ts';
import { whenHolds } from './when-holds.ts';

/** Utilities meter demand as the mean of clock-aligned quarter hours (common practice). */
export const DEMAND_MS = 15 * 60_000;
/** Peaks nearer to each other than this part are one: rounding must not choose between quarter hours of one power. */
export const SAME_PEAK = 1e-9;
/** A ratchet looks back this many months. */
const RATCHET_MONTHS = 11;

/** One month's bill of one demand rule. */
export interface MonthDemand {
  month: string;
  /** the month's own peak, kW, and when its quarter hour began; null where no power fell into the rule's time */
  peakKw: number;
  atMs: number | null;
  /** after the ratchet */
  billedKw: number;
  cost: number;
  /** the quarter hour that set the bill (an earlier month's under the ratchet) and each part's share of it, [parts] */
  setByMs: number | null;
  shares: readonly number[];
}

/** Mean power by clock-aligned quarter hour (of UTC: all offsets are whole quarter hours), kW, only those with power. */
export function quarterMeans(spans: PowerSpans): Map<number, number> {
  const means = new Map<number, number>();
  for (let i = 0; i < spans.startMs.length; i++) {
    const power = spans.powerW[i];
    if (!(power > 0)) continue;
    let at = spans.startMs[i];
    while (at < spans.endMs[i]) {
      const quarter = Math.floor(at / DEMAND_MS);
      const to = Math.min(spans.endMs[i], (quarter + 1) * DEMAND_MS);
      means.set(quarter, (means.get(quarter) ?? 0) + (power * (to - at)) / DEMAND_MS / 1000);
      at = to;
    }
  }
  return means;
}

/** Of months up to the billed one, the one whose peak its ratchet looks at: the highest of the last eleven. */
export function ratchetMonth<M extends { peakKw: number }>(before: readonly M[]): M | null {
  return before
    .slice(-RATCHET_MONTHS)
    .reduce<M | null>((best, m) => (best === null || m.peakKw > best.peakKw ? m : best), null);
}

/** What a month is billed at least, kW: nothing in months in which the rule never holds. */
export function ratchetFloor(rule: DemandRule, month: string, highestBeforeKw: number): number {
  const holds = rule.when?.months == null || rule.when.months.has(Number(month.slice(5)));
  return holds ? (rule.ratchet ?? 0) * highestBeforeKw : 0;
}

/**
 * Bill one demand rule over the months that [fromMs, toMs) touches.
 *
 * The month's peak is the highest quarter-hour mean of the sum of all parts among those that begin while the rule's
 * `when` holds; of equal peaks the first. Billed: that, or ratchet x the highest of the eleven months before
 * (those in the data), whichever is more. A month in which the rule never holds bills nothing, ratchet or not.
 * Shared by each part's power in the quarter hour that set the bill.
 *
 * @param parts  what shares the meter, e.g. one entry a fan
 */
export function monthlyDemand(
  rule: DemandRule,
  zone: Zone,
  parts: readonly PowerSpans[],
  fromMs: number,
  toMs: number,
): MonthDemand[] {
  const means = parts.map(quarterMeans);
  const sums = new Map<number, number>();
  for (const part of means) for (const [quarter, kw] of part) sums.set(quarter, (sums.get(quarter) ?? 0) + kw);
  const quarters = Float64Array.from(sums.keys()).sort();
  const months: MonthDemand[] = [];
  let q = 0;
  for (const { month, fromMs: start, toMs: end } of localMonths(zone, fromMs, toMs)) {
    let peakKw = 0;
    let atMs: number | null = null;
    while (q < quarters.length && quarters[q] * DEMAND_MS < start) q += 1;
    for (; q < quarters.length && quarters[q] * DEMAND_MS < end; q++) {
      const kw = sums.get(quarters[q]) ?? 0;
      if (kw > peakKw * (1 + SAME_PEAK) && whenHolds(rule.when, localMoment(zone, quarters[q] * DEMAND_MS))) {
        peakKw = kw;
        atMs = quarters[q] * DEMAND_MS;
      }
    }
    const before = ratchetMonth(months);
    const floor = ratchetFloor(rule, month, before?.peakKw ?? 0);
    const billedKw = Math.max(peakKw, floor);
    const setByMs = floor > peakKw ? (before?.atMs ?? null) : atMs;
    const own = means.map((part) => (setByMs === null ? 0 : (part.get(setByMs / DEMAND_MS) ?? 0)));
    const sum = own.reduce((a, b) => a + b, 0);
    const shares = own.map((kw) => (sum > 0 ? kw / sum : 0));
    months.push({ month, peakKw, atMs, billedKw, cost: billedKw * rule.pricePerKw, setByMs, shares });
  }
  return months;
}
