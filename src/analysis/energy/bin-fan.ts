import { type Estimate, withheld } from '../../base/estimate.ts';
import { zoneOf } from '../../base/zone.ts';
import type { Bin, Season } from '../../season/season.ts';
import { binSpans } from '../fan/bin-spans.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import { ofOneFilling, REFILLED_WHY, wasRefilled } from '../grain/one-filling.ts';
import { anyBushels, type Bushels, perBushel as overBushels } from '../grain/per-bushel.ts';
import type { BinFan, BinHeater, FanSeason } from '../types.ts';
import { besideOthers } from './beside-others.ts';
import { binHeater } from './bin-heater.ts';
import { binMonths, type FanShare } from './bin-months.ts';
import { binsOnFan } from './bins-on-fan.ts';
import { energyFrom, energyFromText } from './energy-from.ts';
import { fanCost } from './fan-cost.ts';
import { heatCost } from './heat-cost.ts';
import { hoursOfFans } from './hours-together.ts';
import { coverageNotes, otherSeason } from './log-coverage.ts';
import { outsideStorage, outsideText } from './outside-storage.ts';
import { addParts, ofParts, type Part, scaledPart } from './parts.ts';
import { startsTogether } from './starts-together.ts';
import { billInDoubt, tariffBills } from './tariff-bill.ts';

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
  const least = billInDoubt(season, fanSeasons) ? tariffBills(season, fanSeasons, 'least') : bills;
  const notes: string[] = [];
  const shares: FanShare[] = [];
  const heaters: BinHeater[] = [];
  let costWhy: string | null = null;
  let heatWhy: string | null = null;
  const missing: string[] = [];
  const logged = fanSeasons.filter(({ fanId, spans }) => bin.fanIds.includes(fanId) && spans.state.length > 0);
  const whole = binSpans(logged.map((fan) => fan.spans));
  for (const id of bin.fanIds) {
    const stated = season.fans.find((fan) => fan.id === id);
    const own = logged.find((one) => one.fanId === id);
    if (stated === undefined || own === undefined) {
      missing.push(id);
      continue;
    }
    const fan = besideOthers(own, whole);
    const bill = stated.tariffId === null ? undefined : bills.get(stated.tariffId);
    if (bill === undefined) costWhy = `Fan ${id} has no tariff in season.yaml, so its energy has no price.`;
    const cost = fanCost(stated, fan, bill, bill === undefined ? undefined : least.get(bill.tariff.id));
    if (Number.isNaN(cost.energy?.value)) costWhy = `The tariff of fan ${id} has no energy price for part of the time.`;
    const heat = heatCost(stated, fan, bill, cost.runningW);
    if (heat.part === null) heatWhy = `The cost of heat is not known: ${heat.note}.`;
    else if (heat.note !== null) notes.push(heat.note);
    const users = binsOnFan(season, id);
    if (users > 1) notes.push(`Fan ${id} serves ${users} bins; each carries an equal part of its energy and cost.`);
    const heater = binHeater(stated, fan, 1 / users, cost.runningW);
    if (heater !== null) heaters.push(heater);
    shares.push({ fan, bill, cost, heat: heat.part, part: 1 / users });
  }
  if (bin.fanIds.length === 0) return nothing(shares, 'The bin has no fan in season.yaml.');
  const doubt = fanSeasons.find((fan) => missing.includes(fan.fanId) && fan.doubt !== undefined)?.doubt;
  if (doubt !== undefined) return { ...nothing(shares, doubt), spans: binSpans([]), doubt };
  if (missing.length > 0) {
    return nothing(
      shares,
      `No log tells what fan ${missing.join(' and ')} did, so the bin's fan hours and cost are not known.`,
    );
  }
  const other = otherSeason(bin, whole);
  if (other !== null) return nothing(shares, other);
  const spans = whole;
  const unknownHours = unknownHoursBetween(spans);
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
  const total = (pick: (share: FanShare) => Part | null, why: string | null): Estimate => {
    const parts = shares.map((share) => ({ own: pick(share), part: share.part }));
    if (why !== null || parts.some(({ own }) => own === null)) return withheld(why ?? 'Part of it has no price.');
    return ofParts(parts.map(({ own, part }) => scaledPart(own as Part, part)));
  };
  const cost = total(
    ({ cost, heat }) => addParts([cost.energy, cost.demand, cost.connected, heat]),
    costWhy ?? heatWhy,
  );
  const energyKwh = total((share) => share.cost.energyKwh, null);
  const noBushels = 'The bushels in the bin are not known.';
  if (wasRefilled(bin)) notes.push(REFILLED_WHY);
  const perBushel = (of: Estimate) =>
    anyBushels(bushels) ? overBushels(ofOneFilling(of, bin), bushels) : withheld(of.why ?? noBushels);
  const reasons = [costWhy, heatWhy, ...notes].filter((text) => text !== null);
  return {
    fans: shares.map((share) => share.fan),
    spans,
    hours: hoursOfFans(
      spans,
      shares.map((share) => share.fan),
    ),
    unknownHours,
    starts: startsTogether(
      shares.map((share) => share.fan),
      spans,
    ),
    energyKwh,
    energyFrom: energyFrom(energyParts),
    energyFromHow: energyFromText(energyParts),
    outside,
    energyCost: total((share) => share.cost.energy, costWhy),
    demandCost: total((share) => share.cost.demand, costWhy),
    connectedCost: total((share) => share.cost.connected, costWhy),
    heatCost: total((share) => share.heat, heatWhy),
    heaters,
    cost,
    kwhPerBushel: perBushel(energyKwh),
    costPerBushel: perBushel(cost),
    why: reasons.length > 0 ? reasons.join(' ') : null,
    months: binMonths(zoneOf(season.site.timeZone), shares, spans, costWhy, {
      hours: fanHoursBetween(spans),
      sd: hoursSd,
    }),
  };
}

function nothing(shares: readonly FanShare[], why: string): BinFan {
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
