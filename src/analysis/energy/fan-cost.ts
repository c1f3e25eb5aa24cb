import type { Fan } from '../../bin/fan.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { nameplateHp, nominalPower } from '../fan/nominal-power.ts';
import { FAN_ON, FAN_UNKNOWN, type FanSeason } from '../types.ts';
import type { Part } from './parts.ts';
import type { TariffBill } from './tariff-bill.ts';

/** The highest of many quarter hours is picked for its errors too, and a meter's step is some percent of a quarter hour; a working assumption, from memory. */
export const PEAK_REL_SD = 0.02;

export interface FanCost {
  energyKwh: Part;
  /** null where no tariff prices the fan */
  energy: Part | null;
  demand: Part | null;
  connected: Part | null;
  /** demand cost by month, `2024-10` -> money */
  demandByMonth: ReadonlyMap<string, number>;
  /** mean power while running, W; the nameplate's where it never ran */
  runningW: number;
}

/** Relative standard error of a fan's energy. A meter counts whatever the hours are; elsewhere energy is power x hours and their errors add up. */
export function fanRelSd(season: FanSeason): number {
  const metered = season.energyFrom === 'meter' || season.onHours === 0;
  return Math.hypot(season.energyRelSd, metered ? 0 : (season.onHoursSd ?? 0) / season.onHours);
}

/** What one fan used and what its tariff charged for it. */
export function fanCost(fan: Fan, season: FanSeason, bill: TariffBill | undefined): FanCost {
  const runningW =
    season.onHours > 0 && season.energyKwh > 0 ? (season.energyKwh * 1000) / season.onHours : nominalPower(fan).powerW;
  const relSd = fanRelSd(season);
  const moreKwh = (season.unknownHours * runningW) / 1000;
  const energyKwh = { value: season.energyKwh, sd: relSd * season.energyKwh, more: moreKwh };
  const demandByMonth = new Map<string, number>();
  if (bill === undefined) return { energyKwh, energy: null, demand: null, connected: null, demandByMonth, runningW };
  const { cost } = energyCost(season.spans, bill.rates);
  const energy = { value: cost, sd: relSd * cost, more: unknownCost(season, bill, runningW) };
  let demand = 0;
  let more = 0;
  const part = bill.fans.indexOf(season);
  const months = localMonths(bill.zone, bill.fromMs, bill.toMs);
  bill.demand.forEach((rule, r) => {
    rule.forEach(({ month, cost, shares }, m) => {
      const own = cost * (shares[part] ?? 0);
      demand += own;
      demandByMonth.set(month, (demandByMonth.get(month) ?? 0) + own);
      if (hasUnknown(season, months[m].fromMs, months[m].toMs)) {
        more += Math.max(0, (runningW / 1000) * bill.tariff.demand[r].pricePerKw - own);
      }
    });
  });
  const connected = (bill.tariff.connectedPerHpYear ?? 0) * nameplateHp(fan) * bill.years;
  return {
    energyKwh,
    energy,
    demand: { value: demand, sd: Math.hypot(season.energyRelSd, PEAK_REL_SD) * demand, more },
    connected: { value: connected, sd: 0, more: 0 },
    demandByMonth,
    runningW,
  };
}

/** The energy cost if the fan had run through all of its unknown time. */
function unknownCost(season: FanSeason, bill: TariffBill, runningW: number): number {
  if (season.unknownHours === 0) return 0;
  const powerW = Float64Array.from(season.spans.state, (state) => (state === FAN_UNKNOWN ? runningW : 0));
  return energyCost({ ...season.spans, powerW }, bill.rates).cost;
}

export function hasUnknown(season: FanSeason, fromMs: number, toMs: number): boolean {
  const { startMs, endMs, state } = season.spans;
  return state.some((s, k) => s === FAN_UNKNOWN && endMs[k] > fromMs && startMs[k] < toMs);
}

/** Power of the fan's heater while the fan runs, [spans], for pricing. */
export function heaterSpans(season: FanSeason, heaterW: number) {
  return { ...season.spans, powerW: Float64Array.from(season.spans.state, (s) => (s === FAN_ON ? heaterW : 0)) };
}
