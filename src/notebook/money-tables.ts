import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { monthText } from '../report/date-text.ts';
import { monthsByBin } from '../report/figures/months-by-bin.ts';
import type { SectionBody, Table } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import { dearestMonth } from './dearest-month.ts';
import { knownTotal } from './words.ts';

const plain = (value: number): Estimate => ({ value, interval: null, why: null });

/** Highest months that are named where several print alike. */
const MOST_NAMED = 3;

/** `Lane 42 ran most in Oct 2024: 602 h (…)`: the highest month of all bins, or those that print alike. */
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
  const printed = units.number(quantity, top.of.value);
  const alike = all.filter(({ of }) => of.value !== null && units.number(quantity, of.value) === printed);
  if (alike.length === 1) return `${top.name} ${verb} most in ${monthText(top.month)}: ${units.say(quantity, top.of)}`;
  // Alike as they are printed: the widest of their intervals holds for each.
  const ends = alike.flatMap(({ of }) => of.interval ?? []);
  const each = units.say(quantity, { ...top.of, interval: [Math.min(...ends), Math.max(...ends)] });
  return alike.length > MOST_NAMED
    ? `${alike.length} months of bins ${verb} most: ${each} each`
    : `${listed(alike.map(({ name, month }) => `${name} in ${monthText(month)}`))} ${verb} most: ${each} each`;
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
  const priced = cost.some(({ months }) => months.some(({ values }) => values.some((value) => value !== null)));
  return {
    lead: dearestMonth(bins, units) ?? 'No fan ran in any month.',
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
      // Without a price there is nothing to draw; the table says why.
      ...(priced
        ? [
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
          ]
        : []),
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
      { key: 'unknown', label: 'Not known', quantity: 'hours', known: 'counted' },
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
