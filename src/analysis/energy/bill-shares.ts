import type { Table } from 'apache-arrow';
import { type Estimate, estimate, scaled, withheld, Z90 } from '../../base/estimate.ts';
import { toLocalMs, type Zone, zoneOf } from '../../base/zone.ts';
import { quarterMeans } from '../../money/demand.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { elevenMonthsBefore, periodDemand } from '../../money/period-demand.ts';
import { NO_RATES, rateBreaks } from '../../money/rate-breaks.ts';
import type { Season } from '../../season/season.ts';
import { numbers, texts } from '../../tables/arrow.ts';
import { fanWithoutLog } from '../fan/fan-without-log.ts';
import { nameplateHp, nominalPower } from '../fan/nominal-power.ts';

import type { FanSeason, FanSpans } from '../types.ts';
import type { BillShare } from './bill-types.ts';
import { bothHeats } from './both-heats.ts';
import { fanRelSd } from './fan-cost.ts';
import { HEATER_REL_SD, type HeatTaken, heaterSpans } from './heater-use.ts';
import { moneyOfFans } from './money-of-fans.ts';
import { heaterBesideW, heatInDoubt, onTheMeter } from './on-the-meter.ts';
import { type BilledFan, overBilled } from './over-billed.ts';
import { overlappingBills } from './overlapping-bills.ts';
import { notBelowZero } from './parts.ts';
import { placingDoubts } from './placing-doubt.ts';
import { untoldHours } from './untold-hours.ts';

const J_PER_KWH = 3.6e6;

/**
 * Every bill beside what the fans of its tariff used and cost in its own time: their runs are cut exactly at its first and
 * last moment, also where these are not a calendar month's, and the demand is that of the fans' own peak between them.
 *
 * Electric heaters on the tariff count with their fans; as far as no log tells when they burned the lower ends leave them out.
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
  const toldFans = metered(season, fanSeasons, 'told');
  const leastFans = heatInDoubt(season, fanSeasons) ? metered(season, fanSeasons, 'least') : null;
  const overlaps = overlappingBills(Array.from(from, (fromMs, i) => ({ tariffId: tariffs[i], fromMs, toMs: to[i] })));
  return Array.from(from, (fromMs, i) => {
    const { ownFromMs, over } = overlaps[i];
    const bill = {
      tariffId: tariffs[i],
      fromMs: ownFromMs,
      toMs: to[i],
      billedKwh: given(energy[i] / J_PER_KWH),
      billedKw: given(demand[i] / 1000),
      amount: given(amount[i]),
    };
    const leftOut =
      over === null
        ? null
        : `It lies over the bill of ${over.tariffId} from ${new Date(toLocalMs(zone, over.fromMs)).toISOString().slice(0, 10)}; those days are counted once, with that bill.`;
    const told = shareOf(bill, season, toldFans, zone);
    const share = leastFans === null ? told : bothHeats(told, shareOf(bill, season, leastFans, zone));
    return { ...share, fromMs, leftOut };
  });
}

/** Fans as their tariffs' meters see them. */
interface MeteredFans {
  fanSeasons: readonly FanSeason[];
  means: ReadonlyMap<FanSeason, ReadonlyMap<number, number>>;
  /** fan id -> what its heater draws beside it; of fans with such a heater */
  heat: ReadonlyMap<string, FanSpans>;
}

function metered(season: Season, fanSeasons: readonly FanSeason[], taken: HeatTaken): MeteredFans {
  const seen = onTheMeter(season, fanSeasons, taken);
  const heat = fanSeasons.flatMap((one) => {
    const stated = season.fans.find(({ id }) => id === one.fanId);
    const heaterW = stated === undefined ? 0 : heaterBesideW(stated, one);
    return heaterW > 0 ? [[one.fanId, heaterSpans(one, heaterW, taken)] as const] : [];
  });
  return {
    fanSeasons: seen,
    means: new Map(seen.map((fan) => [fan, quarterMeans(fan.spans)])),
    heat: new Map(heat),
  };
}

type Bill = Pick<BillShare, 'tariffId' | 'fromMs' | 'toMs' | 'billedKwh' | 'billedKw' | 'amount'>;

function shareOf(
  bill: Bill,
  season: Season,
  { fanSeasons, means, heat: heated }: MeteredFans,
  zone: Zone,
): Omit<BillShare, 'leftOut'> {
  const { fromMs, toMs, billedKwh, amount } = bill;
  const tariff = season.tariffs.find((one) => one.id === bill.tariffId);
  const on = season.fans.filter((fan) => fan.tariffId === bill.tariffId);
  const rates = tariff === undefined ? NO_RATES : rateBreaks(tariff, zone, fromMs, toMs);
  const logged = on.map((stated) => fanSeasons.find((one) => one.fanId === stated.id) ?? fanWithoutLog(stated.id));
  const begunMs = Math.min(...logged.flatMap(({ spans }) => Array.from(spans.startMs.subarray(0, 1))));
  const ratchetMs = Math.max(elevenMonthsBefore(zone, fromMs), begunMs);
  const fans = on.map((stated, f): BilledFan => {
    const fan = logged[f];
    const { kwh, cost } = energyCost(fan.spans, rates, fromMs, toMs);
    const runningKw = fan.onHours > 0 ? fan.energyKwh / fan.onHours : nominalPower(stated).powerW / 1000;
    const heat = heated.get(stated.id);
    return {
      fan,
      kwh,
      heaterKwh: heat === undefined ? 0 : energyCost(heat, NO_RATES, fromMs, toMs).kwh,
      cost,
      runningKw,
      untoldHours: untoldHours(fan, season, fromMs, toMs),
      untoldBefore: ratchetMs < fromMs && untoldHours(fan, season, ratchetMs, fromMs) > 0,
    };
  });
  const kwh = fans.reduce((sum, one) => sum + one.kwh, 0);
  const halfKwh = Z90 * Math.hypot(...fans.map((one) => fanRelSd(one.fan) * one.kwh));
  const moreKwh = fans.reduce((sum, one) => sum + one.untoldHours * one.runningKw, 0);
  const most = kwh + halfKwh + moreKwh;
  const doubt = logged.find((fan) => fan.doubt !== undefined)?.doubt;
  const fansKwh =
    doubt !== undefined
      ? withheld(doubt)
      : estimate(
          kwh,
          Math.max(0, kwh - halfKwh),
          billedKwh === null || billedKwh < 0 ? most : Math.max(kwh + halfKwh, Math.min(most, billedKwh)),
        );
  const months = monthsIn(zone, fromMs, toMs);
  const fixed = (tariff?.fixedPerMonth ?? 0) * Math.max(1, Math.round(months));
  const connected = on.reduce((sum, fan) => sum + nameplateHp(fan), 0) * (tariff?.connectedPerHpYear ?? 0);
  const ofFans = fans.map(({ fan }) => means.get(fan) ?? NO_MEANS);
  const demand = (tariff?.demand ?? []).map((rule) => periodDemand(rule, zone, ofFans, fromMs, toMs));
  const fansMoney =
    tariff === undefined || fansKwh.value === null
      ? withheld(fansKwh.why ?? `The tariff ${bill.tariffId} is not in season.yaml.`)
      : moneyOfFans(fans, demand, tariff, rates, {
          connected: (connected / 12) * months,
          moreKwh: (fansKwh.interval?.[1] ?? kwh) - kwh - halfKwh,
          placing: placingDoubts(logged, rates, fromMs, toMs),
          most: amount === null ? Number.POSITIVE_INFINITY : amount - fixed,
        });
  const share = billedKwh !== null && billedKwh > 0 ? scaled(fansKwh, 1 / billedKwh) : withheld(noEnergy(billedKwh));
  const below = billedKwh !== null && billedKwh < 0;
  const restKwh = billedKwh === null || below ? withheld(noEnergy(billedKwh)) : lessOf(billedKwh, fansKwh);
  return {
    ...bill,
    fansKwh,
    heaterKwh: on.some(({ id }) => heated.has(id)) ? (doubt === undefined ? heatOf(fans) : withheld(doubt)) : null,
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

function heatOf(fans: readonly BilledFan[]): Estimate {
  const kwh = fans.reduce((sum, one) => sum + one.heaterKwh, 0);
  return notBelowZero(kwh, Z90 * Math.hypot(...fans.map((one) => HEATER_REL_SD * one.heaterKwh)), 0);
}

const NO_MEANS: ReadonlyMap<number, number> = new Map();

function noEnergy(billedKwh: number | null): string {
  if (billedKwh === null) return 'The bill does not say its energy.';
  return billedKwh < 0 ? 'The energy of the bill is below zero, so the bill is left out.' : 'Nothing was billed.';
}

/** Calendar months in [fromMs, toMs), parts of them as parts. */
function monthsIn(zone: Zone, fromMs: number, toMs: number): number {
  return localMonths(zone, fromMs, toMs).reduce(
    (sum, month) => sum + (Math.min(month.toMs, toMs) - Math.max(month.fromMs, fromMs)) / (month.toMs - month.fromMs),
    0,
  );
}

/** What a stated whole leaves when an estimate is taken off. */
function lessOf(whole: number, part: Estimate): Estimate {
  if (part.value === null || part.interval === null) return part;
  return estimate(whole - part.value, whole - part.interval[1], whole - part.interval[0]);
}
