import type { BinReview, SeasonReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { monthText } from '../report/date-text.ts';
import { monthsByBin } from '../report/figures/months-by-bin.ts';
import type { SectionBody, Table } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { counted, knownTotal, listed } from './words.ts';

const plain = (value: number): Estimate => ({ value, interval: null, why: null });

/** `Lane 42 ran most in Oct 2024: 602 h (…)`: the highest month of all bins. */
function peakMonth(
  bins: readonly BinReview[],
  quantity: Quantity,
  verb: string,
  pick: (month: BinReview['fan']['months'][number]) => Estimate,
  units: Units,
): string | null {
  const all = bins.flatMap(({ bin, fan }) =>
    fan.months.map((each) => ({ name: bin.name, month: each.month, of: pick(each) })),
  );
  const top = all.reduce((most, one) => ((one.of.value ?? 0) > (most.of.value ?? 0) ? one : most), all[0]);
  if (top === undefined || (top.of.value ?? 0) === 0) return null;
  return `${top.name} ${verb} most in ${monthText(top.month)}: ${units.say(quantity, top.of)}`;
}

function monthsOf(
  bins: readonly BinReview[],
  values: (month: BinReview['fan']['months'][number]) => (number | null)[],
) {
  return bins.map((one) => ({
    name: one.bin.name,
    months: one.fan.months.map((each) => ({ month: each.month, values: values(each) })),
  }));
}

/** Fan hours and cost of every bin by month. */
export function monthSection(bins: readonly BinReview[], units: Units): SectionBody {
  if (bins.every((one) => one.fan.months.length === 0)) {
    return { lead: 'Can’t tell of any month: no bin has a fan log that could be used.' };
  }
  const hours = monthsOf(bins, (each) => [each.hours]);
  const cost = monthsOf(bins, (each) => [each.energyCost, each.demandCost]);
  return {
    lead: 'When the fans ran, and what each month added to the bill.',
    figures: [
      monthsByBin(
        {
          id: 'hours',
          title:
            peakMonth(bins, 'hours', 'ran', (each) => each.told?.hours ?? plain(each.hours), units) ?? 'No fan ran',
          quantity: 'hours',
          parts: ['fan hours'],
          bins: hours,
        },
        units,
      ),
      monthsByBin(
        {
          id: 'cost',
          title: peakMonth(bins, 'money', 'cost', costOf, units) ?? 'No month has a cost',
          quantity: 'money',
          parts: ['energy', 'demand'],
          bins: cost,
        },
        units,
      ),
    ],
    tables: [monthTable(bins)],
  };
}

/** Energy and demand of a month; both are wrong together. */
function costOf({ told, energyCost, demandCost }: BinReview['fan']['months'][number]): Estimate {
  const parts = [told?.energyCost ?? plain(energyCost ?? 0), told?.demandCost ?? plain(demandCost ?? 0)];
  return knownTotal(parts).total;
}

/** Hours, energy and money of each bin and month, the numbers behind the monthly bars. */
function monthTable(bins: readonly BinReview[]): Table {
  const unpriced = 'No tariff prices this bin’s fans.';
  return {
    id: 'months',
    caption: 'Fan hours, energy and cost by bin and month',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'month', label: 'Month', quantity: 'month' },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'unknown', label: 'Not known', quantity: 'hours', known: 'measured' },
      { key: 'energy', label: 'Energy', quantity: 'energy' },
      { key: 'energyCost', label: 'Energy cost', quantity: 'money' },
      { key: 'demandCost', label: 'Demand cost', quantity: 'money' },
    ],
    rows: bins.flatMap((one) =>
      one.fan.months.map((month) => ({
        bin: one.bin.name,
        month: month.month,
        hours: month.told?.hours ?? month.hours,
        unknown: month.unknownHours,
        energy: month.told?.energyKwh ?? month.energyKwh,
        energyCost: month.told?.energyCost ?? month.energyCost ?? { value: null, why: unpriced },
        demandCost: month.told?.demandCost ?? month.demandCost ?? { value: null, why: unpriced },
      })),
    ),
    empty: 'no bin has a fan log.',
  };
}

/** The tariffs month by month, with the moment of each peak. */
export function tariffTable({ season }: LoadedSeason, review: SeasonReview, units: Units): SectionBody {
  const months = review.tariffMonths;
  if (months.length === 0) {
    return { lead: 'Can’t tell: season.yaml states no tariff for these fans, or none of them has a log.' };
  }
  const total = knownTotal(months.map((one) => one.told?.total ?? plain(one.total))).total;
  const demand = knownTotal(
    months.map((one) => one.told?.demandCost ?? plain(one.demand.reduce((all, rule) => all + rule.cost, 0))),
  ).total;
  const peaks = months.flatMap((one) => one.demand.map((rule) => ({ ...rule, month: one.month })));
  const top = peaks.reduce((most, one) => (one.peakKw > most.peakKw ? one : most), peaks[0]);
  const none = { value: null, why: 'This tariff has no demand charge.' };
  const silent = season.fans.filter(
    ({ id, tariffId }) =>
      months.some((one) => one.tariffId === tariffId) &&
      !review.fans.some(({ fanId, spans }) => fanId === id && spans.state.length > 0),
  );
  return {
    lead: `${units.say('money', total)}${silent.length === 0 ? '' : ' for the fans that have a log,'} over ${counted(months.length, 'tariff month')}, fixed and minimum charges included; demand made ${units.say('money', demand)} of it.`,
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
      ...(silent.length === 0
        ? []
        : [
            `${silent.length === 1 ? 'Fan' : 'Fans'} ${listed(silent.map(({ id }) => id))} of these tariffs ${silent.length === 1 ? 'has' : 'have'} no log: the energy used there, and its part in a peak, is in none of these numbers, nor in their intervals.`,
          ]),
    ],
  };
}

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
        at: rule.atMs ?? { value: null, why: 'No fan ran in the hours of this rule.' },
        peak: rule.told?.peak ?? rule.peakKw,
        billed: rule.told?.billed ?? rule.billedKw,
        cost: rule.told?.cost ?? rule.cost,
      })),
    ),
  };
}
