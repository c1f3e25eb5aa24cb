import type { Fan } from '../../bin/fan.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { nameplateHp, nominalPower } from '../fan/nominal-power.ts';
import { FAN_UNKNOWN, type FanSeason } from '../types.ts';
import { type DemandPart, demandPart, NO_DEMAND, summedDemand } from './demand-part.ts';
import type { Part } from './parts.ts';
import { placingDoubt } from './placing-doubt.ts';
import type { TariffBill } from './tariff-bill.ts';
import { unknownOfFan } from './unknown-demand.ts';

/** The highest of many quarter hours is picked for its errors too, and a meter's step is some percent of a quarter hour; a working assumption, from memory. */
export const PEAK_REL_SD = 0.02;

export interface FanCost {
  energyKwh: Part;
  /** null where no tariff prices the fan */
  energy: Part | null;
  demand: Part | null;
  connected: Part | null;
  /** demand cost by month, `2024-10` -> money */
  demandByMonth: ReadonlyMap<string, DemandPart>;
  /** mean power while running, W; the nameplate's where it never ran */
  runningW: number;
}

/** Relative standard error of a fan's energy. A meter counts whatever the hours are; elsewhere energy is power x hours and their errors add up. */
export function fanRelSd(season: FanSeason): number {
  const metered = season.energyFrom === 'meter' || season.onHours === 0;
  return Math.hypot(season.energyRelSd, metered ? 0 : (season.onHoursSd ?? 0) / season.onHours);
}

/** A fan's mean power while running, W; the nameplate's where it never ran. */
export function runningPowerW(fan: Fan, { onHours, energyKwh }: FanSeason): number {
  return onHours > 0 && energyKwh > 0 ? (energyKwh * 1000) / onHours : nominalPower(fan).powerW;
}

/**
 * What one fan used and what its tariff charged for it. Its energy is its own; its demand is with what its electric heater adds.
 *
 * @param least  the bill with the least heat that is sure, where that is another
 */
export function fanCost(fan: Fan, season: FanSeason, bill: TariffBill | undefined, least = bill): FanCost {
  const runningW = runningPowerW(fan, season);
  const relSd = fanRelSd(season);
  const moreKwh = (season.unknownHours * runningW) / 1000;
  const energyKwh = { value: season.energyKwh, sd: relSd * season.energyKwh, more: moreKwh };
  if (bill === undefined) {
    return { energyKwh, energy: null, demand: null, connected: null, demandByMonth: new Map(), runningW };
  }
  const { cost } = energyCost(season.spans, bill.rates);
  const placing = placingDoubt(season, bill.rates);
  const more = unknownCost(season, bill, runningW) + placing.more;
  const energy = { value: cost, sd: relSd * cost, more, less: placing.less };
  const part = bill.fans.findIndex((one) => one.fanId === season.fanId);
  const metered = bill.fans[part] ?? season;
  const demandByMonth = demandsOf(bill, least ?? bill, part, season, runningPowerW(fan, metered) / 1000);
  const connected = (bill.tariff.connectedPerHpYear ?? 0) * nameplateHp(fan) * bill.years;
  return {
    energyKwh,
    energy,
    demand: summedDemand([...demandByMonth.values()]),
    connected: { value: connected, sd: 0, more: 0 },
    demandByMonth,
    runningW,
  };
}

/** A fan's part of the demand, by month. @param part  where the fan stands in the bill @param runningKw  with its heater */
function demandsOf(
  bill: TariffBill,
  least: TariffBill,
  part: number,
  season: FanSeason,
  runningKw: number,
): Map<string, DemandPart> {
  const byMonth = new Map<string, DemandPart>();
  bill.demand.forEach((months, r) => {
    const rule = bill.tariff.demand[r];
    const most = unknownOfFan(bill, rule, season, runningKw);
    months.forEach(({ month }, m) => {
      const told = ownDemand(bill, r, m, part);
      const sure = least === bill ? told : ownDemand(least, r, m, part);
      const one = demandPart(told, sure, most[m] * rule.pricePerKw);
      byMonth.set(month, summedDemand([byMonth.get(month) ?? NO_DEMAND, one]));
    });
  });
  return byMonth;
}

/** What a fan carries of a month's demand, and the standard error of that. */
function ownDemand({ demand, fans }: TariffBill, r: number, m: number, part: number): { cost: number; sd: number } {
  const { cost, shares } = demand[r][m];
  const own = cost * (shares[part] ?? 0);
  return { cost: own, sd: own * Math.hypot(fans[part]?.energyRelSd ?? 0, PEAK_REL_SD) };
}

/** The energy cost if the fan had run through all of its unknown time. */
function unknownCost(season: FanSeason, bill: TariffBill, runningW: number): number {
  if (season.unknownHours === 0) return 0;
  const powerW = Float64Array.from(season.spans.state, (state) => (state === FAN_UNKNOWN ? runningW : 0));
  return energyCost({ ...season.spans, powerW }, bill.rates).cost;
}
