import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { zoneOf } from '../../base/zone.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import type { Bin, Season } from '../../season/season.ts';
import { binSpans } from '../fan/bin-spans.ts';
import { fanHoursBetween, startsOf, unknownHoursBetween } from '../fan/spans.ts';
import { anyBushels, type Bushels, perBushel as overBushels } from '../grain/per-bushel.ts';
import type { BinFan, FanSeason, FanSpans } from '../types.ts';
import { energyFrom, energyFromText } from './energy-from.ts';
import { type FanCost, fanCost, fanRelSd, type Part, PEAK_REL_SD } from './fan-cost.ts';
import { heatCost } from './heat-cost.ts';
import { outsideStorage, outsideText } from './outside-storage.ts';
import { type TariffBill, tariffBills } from './tariff-bill.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

interface Share {
  fan: FanSeason;
  bill: TariffBill | undefined;
  cost: FanCost;
  heat: Part | null;
  /** part of the fan's energy and cost that this bin carries */
  part: number;
}

/**
 * A bin's fan story: hours, energy and cost with intervals.
 *
 * A fan that season.yaml lists under several bins gives each an equal part of its energy and cost, and its full hours.
 * Fixed and minimum charges stay with the tariff.
 *
 * @param bushels  grain as filled, with its interval, for the unit costs; null where not known
 */
export function binFan(bin: Bin, season: Season, fanSeasons: readonly FanSeason[], bushels: Bushels | null): BinFan {
  const bills = tariffBills(season, fanSeasons);
  const notes: string[] = [];
  const shares: Share[] = [];
  let costWhy: string | null = null;
  let heatWhy: string | null = null;
  const missing: string[] = [];
  for (const id of bin.fanIds) {
    const stated = season.fans.find((fan) => fan.id === id);
    const fan = fanSeasons.find((one) => one.fanId === id);
    if (stated === undefined || fan === undefined || fan.spans.state.length === 0) {
      missing.push(id);
      continue;
    }
    const bill = stated.tariffId === null ? undefined : bills.get(stated.tariffId);
    if (bill === undefined) costWhy = `Fan ${id} has no tariff in season.yaml, so its energy has no price.`;
    const cost = fanCost(stated, fan, bill);
    if (Number.isNaN(cost.energy?.value)) costWhy = `The tariff of fan ${id} has no energy price for part of the time.`;
    const heat = heatCost(stated, fan, bill, cost.runningW);
    if (heat.part === null) heatWhy = `The cost of heat is not known: ${heat.note}.`;
    else if (heat.note !== null) notes.push(heat.note);
    const users = season.bins.filter((other) => other.fanIds.includes(id)).length;
    if (users > 1) notes.push(`Fan ${id} serves ${users} bins; each carries an equal part of its energy and cost.`);
    shares.push({ fan, bill, cost, heat: heat.part, part: 1 / Math.max(1, users) });
  }
  if (bin.fanIds.length === 0) return nothing(shares, 'The bin has no fan in season.yaml.');
  if (missing.length > 0) {
    return nothing(
      shares,
      `No log tells what fan ${missing.join(' and ')} did, so the bin's fan hours and cost are not known.`,
    );
  }
  const spans = binSpans(shares.map((share) => share.fan.spans));
  const all = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
  const onHours = fanHoursBetween(spans, ...all);
  const unknownHours = unknownHoursBetween(spans, ...all);
  notes.push(...coverageNotes(bin, spans, unknownHours));
  const outside = outsideStorage(
    bin,
    spans,
    shares.map(({ fan, bill, part }) => ({ spans: fan.spans, rates: bill?.rates ?? null, part })),
  );
  if (outside !== null) notes.push(outsideText(outside, season.currency));
  const energyParts = shares.map(({ fan, part }) => ({
    fanId: fan.fanId,
    from: fan.energyFrom,
    energyKwh: fan.energyKwh * part,
  }));
  const hoursSd = Math.hypot(...shares.map((share) => share.fan.onHoursSd ?? 0));
  const total = (pick: (share: Share) => Part | null, why: string | null): Estimate => {
    const parts = shares.map((share) => ({ own: pick(share), part: share.part }));
    if (why !== null || parts.some(({ own }) => own === null)) return withheld(why ?? 'Part of it has no price.');
    return ofParts(parts.map(({ own, part }) => scaled(own as Part, part)));
  };
  const cost = total(({ cost, heat }) => add([cost.energy, cost.demand, cost.connected, heat]), costWhy ?? heatWhy);
  const energyKwh = total((share) => share.cost.energyKwh, null);
  const noBushels = 'The bushels in the bin are not known.';
  const perBushel = (of: Estimate) => (anyBushels(bushels) ? overBushels(of, bushels) : withheld(of.why ?? noBushels));
  const reasons = [costWhy, heatWhy, ...notes].filter((text) => text !== null);
  return {
    fans: shares.map((share) => share.fan),
    spans,
    hours: estimate(onHours, Math.max(0, onHours - Z90 * hoursSd), onHours + Z90 * hoursSd + unknownHours),
    unknownHours,
    starts: startsTogether(shares, spans),
    energyKwh,
    energyFrom: energyFrom(energyParts),
    energyFromHow: energyFromText(energyParts),
    outside,
    energyCost: total((share) => share.cost.energy, costWhy),
    demandCost: total((share) => share.cost.demand, costWhy),
    connectedCost: total((share) => share.cost.connected, costWhy),
    heatCost: total((share) => share.heat, heatWhy),
    cost,
    kwhPerBushel: perBushel(energyKwh),
    costPerBushel: perBushel(cost),
    why: reasons.length > 0 ? reasons.join(' ') : null,
    months: monthsOf(season, shares, spans, costWhy, hoursSd),
  };
}

/** Errors of different fans are independent; what unknown time could add is added whole to the upper end. */
function ofParts(parts: readonly Part[]): Estimate {
  const value = parts.reduce((sum, part) => sum + part.value, 0);
  const half = Z90 * Math.hypot(...parts.map((part) => part.sd));
  const more = parts.reduce((sum, part) => sum + part.more, 0);
  return estimate(value, Math.max(0, value - half), value + half + more);
}

function scaled({ value, sd, more }: Part, factor: number): Part {
  return { value: value * factor, sd: sd * factor, more: more * factor };
}

/** Of one fan: energy, demand and heat are wrong together. */
function add(parts: readonly (Part | null)[]): Part | null {
  let sum: Part = { value: 0, sd: 0, more: 0 };
  for (const part of parts) {
    if (part === null) return null;
    sum = { value: sum.value + part.value, sd: sum.sd + part.sd, more: sum.more + part.more };
  }
  return sum;
}

/** Starts of the bin's fans taken together, without those that only spread hours of unknown moment. */
function startsTogether(shares: readonly Share[], spans: FanSpans): number {
  const surplus = shares.reduce((sum, { fan }) => sum + startsOf(fan.spans) - fan.starts, 0);
  return Math.max(0, startsOf(spans) - surplus);
}

function coverageNotes(bin: Bin, spans: FanSpans, unknownHours: number): string[] {
  const notes: string[] = [];
  const show = (value: number) => String(Number(value.toPrecision(3)));
  if (unknownHours >= 0.05) {
    notes.push(
      `The fan log is silent for ${show(unknownHours)} h; those hours are counted neither as on nor as off, and the upper ends of the intervals include them.`,
    );
  }
  const { filledMs, unloadedMs } = bin.grain;
  const late = filledMs === null ? 0 : (spans.startMs[0] - filledMs) / DAY_MS;
  if (late > 2)
    notes.push(
      `The fan log begins ${show(late)} days after the bin was filled; fan time before is not in these numbers.`,
    );
  const early = unloadedMs === null ? 0 : (unloadedMs - spans.endMs[spans.endMs.length - 1]) / DAY_MS;
  if (early > 2)
    notes.push(
      `The fan log ends ${show(early)} days before the bin was unloaded; fan time after is not in these numbers.`,
    );
  return notes;
}

function monthsOf(
  season: Season,
  shares: readonly Share[],
  spans: FanSpans,
  costWhy: string | null,
  hoursSd: number,
): BinFan['months'] {
  const zone = zoneOf(season.site.timeZone);
  const all = fanHoursBetween(spans, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  return localMonths(zone, spans.startMs[0], spans.endMs[spans.endMs.length - 1]).map(({ month, fromMs, toMs }) => {
    const kwh: Part[] = [];
    const money: Part[] = [];
    const demand: Part[] = [];
    const none = { startMs: new Float64Array(0), pricePerKwh: new Float64Array(0) };
    for (const { fan, bill, cost, part } of shares) {
      const used = energyCost(fan.spans, bill?.rates ?? none, fromMs, toMs);
      const own = cost.demandByMonth.get(month) ?? 0;
      const moreKwh = (unknownHoursBetween(fan.spans, fromMs, toMs) * cost.runningW) / 1000;
      const dearest = Math.max(0, ...(bill?.rates.pricePerKwh ?? []).filter((price) => !Number.isNaN(price)));
      const perKw = bill?.tariff.demand.reduce((sum, rule) => sum + rule.pricePerKw, 0) ?? 0;
      const sd = fanRelSd(fan);
      kwh.push(scaled({ value: used.kwh, sd: sd * used.kwh, more: moreKwh }, part));
      money.push(scaled({ value: used.cost, sd: sd * used.cost, more: moreKwh * dearest }, part));
      const more = moreKwh > 0 ? Math.max(0, (cost.runningW / 1000) * perKw - own) : 0;
      demand.push(scaled({ value: own, sd: Math.hypot(fan.energyRelSd, PEAK_REL_SD) * own, more }, part));
    }
    const hours = fanHoursBetween(spans, fromMs, toMs);
    const unknownHours = unknownHoursBetween(spans, fromMs, toMs);
    // Of so many starts and stops each month has its part.
    const hoursPart = { value: hours, sd: all > 0 ? hoursSd * Math.sqrt(hours / all) : 0, more: unknownHours };
    const told = {
      hours: ofParts([hoursPart]),
      energyKwh: ofParts(kwh),
      energyCost: costWhy === null ? ofParts(money) : withheld(costWhy),
      demandCost: costWhy === null ? ofParts(demand) : withheld(costWhy),
    };
    return {
      month,
      hours,
      unknownHours,
      energyKwh: told.energyKwh.value ?? 0,
      energyCost: told.energyCost.value,
      demandCost: told.demandCost.value,
      told,
    };
  });
}

function nothing(shares: readonly Share[], why: string): BinFan {
  const no = withheld(why);
  return {
    fans: shares.map((share) => share.fan),
    spans: binSpans(shares.map((share) => share.fan.spans)),
    hours: no,
    unknownHours: null,
    starts: null,
    energyKwh: no,
    energyFrom: null,
    energyCost: no,
    demandCost: no,
    connectedCost: no,
    heatCost: no,
    cost: no,
    kwhPerBushel: no,
    costPerBushel: no,
    why,
    months: [],
  };
}
