import { localClock } from './calendar.ts';
import type { TariffPlan } from './farm-types.ts';

/** The generator's own reading of the tariff, apart from the kit's. Months are `2024-10`, local. */
const inHours = (hour: number, [from, to]: readonly [number, number]): boolean =>
  from < to ? hour >= from && hour < to : hour >= from || hour < to;

export const monthOf = (utcMs: number): string => localClock(utcMs).toISOString().slice(0, 7);

export function energyPrice(tariff: TariffPlan, utcMs: number): number {
  const clock = localClock(utcMs);
  const month = clock.getUTCMonth() + 1;
  const weekday = clock.getUTCDay();
  const found = tariff.energy.find(
    (rule) =>
      (rule.months === undefined || (month >= rule.months[0] && month <= rule.months[1])) &&
      (rule.weekdays !== true || (weekday >= 1 && weekday <= 5)) &&
      (rule.hours === undefined || inHours(clock.getUTCHours(), rule.hours)),
  );
  return found!.price;
}

const QUARTER = 15 * 60_000;

/** kWh by quarter hour (its start, UTC ms) and by payer. */
export type QuarterLoads = Map<number, Map<string, number>>;

export function addQuarter(loads: QuarterLoads, utcMs: number, payer: string, kwh: number): void {
  const start = Math.floor(utcMs / QUARTER) * QUARTER;
  let of = loads.get(start);
  if (of === undefined) {
    of = new Map();
    loads.set(start, of);
  }
  of.set(payer, (of.get(payer) ?? 0) + kwh);
}

export interface DemandMonth {
  month: string;
  peakKw: number;
  atMs: number | null;
  billedKw: number;
  cost: number;
  /** what each payer owes: by its part in the peak that set the bill (an earlier month's peak where the ratchet did) */
  byPayer: Map<string, number>;
}

/** @param months every month of the season in order, with or without load */
export function demandMonths(tariff: TariffPlan, loads: QuarterLoads, months: readonly string[]): DemandMonth[] {
  const { demand } = tariff;
  if (demand === undefined) return [];
  const peaks = months.map((month) => ({ month, kw: 0, atMs: null as number | null }));
  const index = new Map(months.map((month, i) => [month, i]));
  for (const [ms, payers] of [...loads.entries()].sort((a, b) => a[0] - b[0])) {
    const i = index.get(monthOf(ms));
    if (i === undefined || !inHours(localClock(ms).getUTCHours(), demand.hours)) continue;
    const kw = 4 * [...payers.values()].reduce((sum, kwh) => sum + kwh, 0);
    if (kw > peaks[i].kw + 1e-9) {
      peaks[i].kw = kw;
      peaks[i].atMs = ms;
    }
  }
  return peaks.map((peak, i) => {
    const earlier = peaks.slice(Math.max(0, i - 11), i);
    const highest = earlier.reduce((best, one) => (one.kw > best.kw ? one : best), {
      kw: 0,
      atMs: null as number | null,
    });
    const billedKw = Math.max(peak.kw, demand.ratchet * highest.kw);
    const setBy = billedKw > peak.kw ? highest : peak;
    const cost = billedKw * demand.price;
    const byPayer = new Map<string, number>();
    if (setBy.atMs !== null) {
      const payers = loads.get(setBy.atMs)!;
      const total = [...payers.values()].reduce((sum, kwh) => sum + kwh, 0);
      for (const [payer, kwh] of payers) byPayer.set(payer, (cost * kwh) / total);
    }
    return { month: peak.month, peakKw: peak.kw, atMs: peak.atMs, billedKw, cost, byPayer };
  });
}
