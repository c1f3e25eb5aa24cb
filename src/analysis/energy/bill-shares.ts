import type { Table } from 'apache-arrow';
import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { type Zone, zoneOf } from '../../base/zone.ts';
import { quarterMeans } from '../../money/demand.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { periodDemand } from '../../money/period-demand.ts';
import { rateBreaks } from '../../money/rate-breaks.ts';
import type { Tariff } from '../../money/tariff.ts';
import type { Season } from '../../season/season.ts';
import { numbers, texts } from '../../tables/arrow.ts';
import { nameplateHp, nominalPower } from '../fan/nominal-power.ts';
import { spanList, toFanSpans, unknownHoursBetween } from '../fan/spans.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { FanSeason } from '../types.ts';
import type { BillShare } from './bill-types.ts';
import { fanRelSd, PEAK_REL_SD } from './fan-cost.ts';
import { type BilledFan, overBilled } from './over-billed.ts';

const HOUR_MS = 3_600_000;
const J_PER_KWH = 3.6e6;

/**
 * Every bill beside what the fans of its tariff used and cost in its own time: their runs are cut exactly at its first and
 * last moment, also where these are not a calendar month's, and the demand is that of the fans' own peak between them.
 *
 * Time that no log tells could have been run: the upper ends include it, but no more than the bill leaves over. Outside its
 * log a fan is taken to rest while none of its bins holds grain.
 *
 * @param table  table `bills`, in its order
 */
export function billShares(season: Season, table: Table, fanSeasons: readonly FanSeason[]): BillShare[] {
  const [from, to, energy, demand, amount] = ['from', 'to', 'energy_j', 'demand_w', 'amount'].map((name) =>
    numbers(table, name),
  );
  const tariffs = texts(table, 'tariff');
  const zone = zoneOf(season.site.timeZone);
  const given = (value: number) => (Number.isNaN(value) ? null : value);
  const means = new Map(fanSeasons.map((fan) => [fan, quarterMeans(fan.spans)]));
  return Array.from(from, (fromMs, i) => {
    const bill = {
      tariffId: tariffs[i],
      fromMs,
      toMs: to[i],
      billedKwh: given(energy[i] / J_PER_KWH),
      billedKw: given(demand[i] / 1000),
      amount: given(amount[i]),
    };
    return shareOf(bill, season, fanSeasons, means, zone);
  });
}

type Bill = Pick<BillShare, 'tariffId' | 'fromMs' | 'toMs' | 'billedKwh' | 'billedKw' | 'amount'>;

function shareOf(
  bill: Bill,
  season: Season,
  fanSeasons: readonly FanSeason[],
  means: ReadonlyMap<FanSeason, ReadonlyMap<number, number>>,
  zone: Zone,
): BillShare {
  const { fromMs, toMs, billedKwh, amount } = bill;
  const tariff = season.tariffs.find((one) => one.id === bill.tariffId);
  const on = season.fans.filter((fan) => fan.tariffId === bill.tariffId);
  const rates = tariff === undefined ? NO_RATES : rateBreaks(tariff, zone, fromMs, toMs);
  const fans = on.map((stated): BilledFan => {
    const fan = fanSeasons.find((one) => one.fanId === stated.id) ?? withoutLog(stated.id);
    const { kwh, cost } = energyCost(fan.spans, rates, fromMs, toMs);
    const runningKw = fan.onHours > 0 ? fan.energyKwh / fan.onHours : nominalPower(stated).powerW / 1000;
    return { fan, kwh, cost, runningKw, untoldHours: untold(fan, season, fromMs, toMs) };
  });
  const kwh = fans.reduce((sum, one) => sum + one.kwh, 0);
  const halfKwh = Z90 * Math.hypot(...fans.map((one) => fanRelSd(one.fan) * one.kwh));
  const moreKwh = fans.reduce((sum, one) => sum + one.untoldHours * one.runningKw, 0);
  const most = kwh + halfKwh + moreKwh;
  const fansKwh = estimate(
    kwh,
    Math.max(0, kwh - halfKwh),
    billedKwh === null || billedKwh < 0 ? most : Math.max(kwh + halfKwh, Math.min(most, billedKwh)),
  );
  const months = monthsIn(zone, fromMs, toMs);
  const fixed = (tariff?.fixedPerMonth ?? 0) * Math.max(1, Math.round(months));
  const connected = on.reduce((sum, fan) => sum + nameplateHp(fan), 0) * (tariff?.connectedPerHpYear ?? 0);
  const fansMoney = moneyOf(tariff, zone, bill, fans, means, {
    connected: (connected / 12) * months,
    moreKwh: (fansKwh.interval?.[1] ?? kwh) - kwh - halfKwh,
    most: amount === null ? Number.POSITIVE_INFINITY : amount - fixed,
  });
  const share = billedKwh !== null && billedKwh > 0 ? scaled(fansKwh, 1 / billedKwh) : withheld(noEnergy(billedKwh));
  const below = billedKwh !== null && billedKwh < 0;
  const restKwh = billedKwh === null || below ? withheld(noEnergy(billedKwh)) : lessOf(billedKwh, fansKwh);
  return {
    ...bill,
    fansKwh,
    untoldHours: fans.reduce((sum, one) => sum + one.untoldHours, 0),
    share,
    restKwh,
    fansMoney,
    fixed,
    restMoney:
      amount === null
        ? withheld('The bill does not say its amount.')
        : below
          ? withheld(noEnergy(billedKwh))
          : lessOf(amount - fixed, fansMoney),
    cause: restKwh.value !== null && restKwh.value < 0 ? overBilled(restKwh, fans, fromMs, toMs) : null,
  };
}

const withoutLog = (fanId: string): FanSeason => ({
  fanId,
  runsFrom: null,
  energyFrom: null,
  spans: toFanSpans(spanList()),
  onHours: 0,
  unknownHours: 0,
  starts: 0,
  energyKwh: 0,
  energyRelSd: 0,
  how: '',
});

const NO_RATES = { startMs: new Float64Array(0), pricePerKwh: new Float64Array(0) };

function noEnergy(billedKwh: number | null): string {
  if (billedKwh === null) return 'The bill does not say its energy.';
  return billedKwh < 0 ? 'The energy of the bill is below zero, so the bill is left out.' : 'Nothing was billed.';
}

function moneyOf(
  tariff: Tariff | undefined,
  zone: Zone,
  { tariffId, fromMs, toMs }: Bill,
  fans: readonly BilledFan[],
  means: ReadonlyMap<FanSeason, ReadonlyMap<number, number>>,
  { connected, moreKwh, most }: { connected: number; moreKwh: number; most: number },
): Estimate {
  if (tariff === undefined) return withheld(`The tariff ${tariffId} is not in season.yaml.`);
  const energy = fans.reduce((sum, one) => sum + one.cost, 0);
  if (Number.isNaN(energy)) return withheld(`The tariff ${tariffId} has no energy price for part of the time.`);
  const rules = tariff.demand.map((rule) =>
    periodDemand(
      rule,
      zone,
      fans.map((one) => means.get(one.fan) ?? new Map<number, number>()),
      fromMs,
      toMs,
    ),
  );
  const demand = rules.reduce((sum, rule) => sum + rule.cost, 0);
  // Of one fan: energy and demand are wrong together.
  const sds = fans.map(
    ({ fan, cost }, f) =>
      fanRelSd(fan) * cost + fan.energyRelSd * rules.reduce((sum, rule) => sum + rule.shares[f] * rule.cost, 0),
  );
  const value = energy + demand + connected;
  const half = Z90 * Math.hypot(...sds, PEAK_REL_SD * demand);
  // Unknown time could have been run at the dearest hour and on top of the peak.
  const dearest = Math.max(
    0,
    ...rateBreaks(tariff, zone, fromMs, toMs).pricePerKwh.filter((price) => !Number.isNaN(price)),
  );
  const moreKw = moreKwh > 0 ? fans.reduce((sum, one) => sum + (one.untoldHours > 0 ? one.runningKw : 0), 0) : 0;
  const perKw = tariff.demand.reduce((sum, rule) => sum + rule.pricePerKw, 0);
  const upper = value + half + moreKwh * dearest + moreKw * perKw;
  return estimate(value, Math.max(0, value - half), Math.max(value + half, Math.min(upper, most)));
}

/** Hours of [fromMs, toMs) of which the fan's log does not tell: outside it while a bin of the fan holds grain, or unknown in it. */
function untold({ fanId, spans }: FanSeason, season: Season, fromMs: number, toMs: number): number {
  const bins = season.bins.filter((bin) => bin.fanIds.includes(fanId));
  const filled = bins.map((bin) => fillTimes(bin).begunMs ?? Number.NEGATIVE_INFINITY);
  const emptied = bins.map((bin) => bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY);
  const anyBin = bins.length > 0;
  const from = Math.max(fromMs, anyBin ? Math.min(...filled) : fromMs);
  const to = Math.min(toMs, anyBin ? Math.max(...emptied) : toMs);
  const count = spans.startMs.length;
  const told = count === 0 ? 0 : Math.max(0, Math.min(spans.endMs[count - 1], to) - Math.max(spans.startMs[0], from));
  return Math.max(0, to - from - told) / HOUR_MS + unknownHoursBetween(spans, fromMs, toMs);
}

/** Calendar months in [fromMs, toMs), parts of them as parts. */
function monthsIn(zone: Zone, fromMs: number, toMs: number): number {
  return localMonths(zone, fromMs, toMs).reduce(
    (sum, month) => sum + (Math.min(month.toMs, toMs) - Math.max(month.fromMs, fromMs)) / (month.toMs - month.fromMs),
    0,
  );
}

function scaled({ value, interval, why }: Estimate, by: number): Estimate {
  return {
    value: value === null ? null : value * by,
    interval: interval === null ? null : [interval[0] * by, interval[1] * by],
    why,
  };
}

/** What a stated whole leaves when an estimate is taken off. */
function lessOf(whole: number, part: Estimate): Estimate {
  if (part.value === null || part.interval === null) return part;
  return estimate(whole - part.value, whole - part.interval[1], whole - part.interval[0]);
}
