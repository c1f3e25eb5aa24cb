import { heatedBeside } from '../analysis/energy/on-the-meter.ts';
import type { SeasonReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { monthText } from '../report/date-text.ts';
import type { SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { counted, knownTotal } from './words.ts';

const plain = (value: number): Estimate => ({ value, interval: null, why: null });

/** What the demand rules charged on all fans: the meter's peaks are known better than the bins' shares of them. */
export function demandOf({ tariffMonths }: SeasonReview): Estimate {
  return knownTotal(
    tariffMonths.map((one) => one.told?.demandCost ?? plain(one.demand.reduce((all, rule) => all + rule.cost, 0))),
  ).total;
}

/** The tariffs month by month, with the moment of each peak. */
export function tariffTable({ season }: LoadedSeason, review: SeasonReview, units: Units): SectionBody {
  const months = review.tariffMonths;
  if (months.length === 0) {
    return {
      lead: 'Can’t tell: season.yaml states no tariff for these fans, or none of them has a log that could be used.',
    };
  }
  const total = knownTotal(months.map((one) => one.told?.total ?? plain(one.total))).total;
  const demand = demandOf(review);
  const peaks = months.flatMap((one) => one.demand.map((rule) => ({ ...rule, month: one.month })));
  const top = peaks.reduce((most, one) => (one.peakKw > most.peakKw ? one : most), peaks[0]);
  const none = { value: null, why: 'This tariff has no demand charge.' };
  const ratchets = season.tariffs.some(
    ({ id, demand }) => demand.some(({ ratchet }) => ratchet !== null) && months.some((one) => one.tariffId === id),
  );
  const has = (tariffId: string | null) => months.some((one) => one.tariffId === tariffId);
  const untold = season.fans.filter(
    ({ id, tariffId }) =>
      tariffId !== null && !review.fans.some(({ fanId, spans }) => fanId === id && spans.state.length > 0),
  );
  const silent = untold.filter(({ tariffId }) => has(tariffId));
  const lacking = season.tariffs.filter(({ id }) => !has(id) && untold.some(({ tariffId }) => tariffId === id));
  const heated = heatedBeside(season, review.fans)
    .map(({ fanId }) => fanId)
    .filter((fanId) =>
      season.fans.some(({ id, tariffId }) => id === fanId && months.some((one) => one.tariffId === tariffId)),
    );
  const left = review.fans.some(({ fanId, doubt }) => doubt !== undefined && untold.some(({ id }) => id === fanId));
  const log = left ? 'a log that could be used' : 'a log';
  return {
    lead: `${units.say('money', total)}${untold.length === 0 ? '' : ` for the fans that have ${log},`} over ${counted(months.length, 'tariff month')}, fixed and minimum charges included; demand made ${units.say('money', demand)} of it.`,
    table: {
      id: 'tariff-months',
      caption: 'Tariffs by month',
      columns: [
        { key: 'month', label: 'Month', quantity: 'month' },
        { key: 'tariff', label: 'Tariff', quantity: null },
        { key: 'energy', label: 'Energy', quantity: 'energy' },
        { key: 'energyCost', label: 'Energy cost', quantity: 'money' },
        { key: 'demand', label: 'Demand cost', quantity: 'money' },
        { key: 'fixed', label: 'Fixed and connected', quantity: 'money', known: 'stated' },
        { key: 'topUp', label: 'To minimum', quantity: 'money' },
        { key: 'total', label: 'Total', quantity: 'money' },
      ],
      rows: months.map((one) => ({
        month: one.month,
        tariff: one.tariffId,
        energy: one.told?.energyKwh ?? one.energyKwh,
        energyCost: one.told?.energyCost ?? one.energyCost,
        demand:
          one.demand.length === 0
            ? none
            : (one.told?.demandCost ?? one.demand.reduce((sum, rule) => sum + rule.cost, 0)),
        fixed: one.fixed + one.connected,
        topUp: one.told?.minimumTopUp ?? one.minimumTopUp,
        total: one.told?.total ?? one.total,
      })),
      total: { month: 'All months', total },
    },
    tables: peaks.length === 0 ? [] : [peakTable(review)],
    notes: [
      ...(top === undefined || top.atMs === null
        ? []
        : [
            `The highest peak, ${units.say('power', top.told?.peak ?? top.peakKw)}, began on ${units.dateTime(top.atMs)}. Which fans ran then made the demand charge.`,
          ]),
      ...(season.tariffs.some(
        ({ id, connectedPerHpYear }) => connectedPerHpYear !== null && months.some((one) => one.tariffId === id),
      )
        ? [
            'Connected load is charged by the year: bins bear the whole of it, this table a twelfth in each month that it tells, so that the two part where it tells fewer than twelve.',
          ]
        : []),
      ...(ratchets
        ? [
            `The ratchet looks back no further than the fans’ logs do, to ${monthText(months.map(({ month }) => month).sort()[0])}: a higher peak before then, or one that the fans made together with what else the meter feeds, may have been billed on.`,
          ]
        : []),
      ...(heated.length === 0
        ? []
        : [
            `What the electric ${heated.length === 1 ? 'heater of fan' : 'heaters of fans'} ${listed(heated)} drew beside the ${heated.length === 1 ? 'fan’s' : 'fans’'} own energy is counted here, by the stated output, in energy and peaks.`,
          ]),
      ...(silent.length === 0
        ? []
        : [
            `${silent.length === 1 ? 'Fan' : 'Fans'} ${listed(silent.map(({ id }) => id))} of these tariffs ${silent.length === 1 ? 'has' : 'have'} no ${log.slice(2)}: the energy used there, and its part in a peak, is in none of these numbers, nor in their intervals.`,
          ]),
      ...lacking.map(({ id }) => `Nothing is told of tariff ${id}: no fan on it has ${log}.`),
    ],
  };
}

const UNTIMED =
  'A meter that was read once a day or more seldom tells how many hours a fan of this tariff ran, not when; the peak is the highest that these can have made.';

function peakTable(review: SeasonReview): Table {
  return {
    id: 'peaks',
    caption: 'The month’s highest 15-minute mean for each demand rule',
    columns: [
      { key: 'month', label: 'Month', quantity: 'month' },
      { key: 'tariff', label: 'Tariff', quantity: null },
      { key: 'rule', label: 'Demand rule', quantity: null },
      { key: 'at', label: 'Peak began', quantity: 'moment' },
      { key: 'peak', label: 'Peak', quantity: 'power' },
      { key: 'billed', label: 'Billed', quantity: 'power' },
      { key: 'cost', label: 'Cost', quantity: 'money' },
    ],
    rows: review.tariffMonths.flatMap((one) =>
      one.demand.map((rule, i) => ({
        month: one.month,
        tariff: one.tariffId,
        rule: String(i + 1),
        at: rule.atMs ?? { value: null, why: rule.peakKw > 0 ? UNTIMED : 'No fan ran in the hours of this rule.' },
        peak: rule.told?.peak ?? rule.peakKw,
        billed: rule.told?.billed ?? rule.billedKw,
        cost: rule.told?.cost ?? rule.cost,
      })),
    ),
  };
}
