import { fanGroups } from '../../analysis/energy/fan-groups.ts';
import { hoursTogether } from '../../analysis/energy/hours-together.ts';
import { fanHoursBetween } from '../../analysis/fan/spans.ts';
import type { SeasonReview } from '../../analysis/types.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { localMonths } from '../../money/local-time.ts';
import { monthText } from '../../report/date-text.ts';
import type { Section, SectionBody } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { billSection } from '../energy-bills.ts';
import { sourceSection } from '../energy-source.ts';
import { heatCostNotes } from '../heater-notes.ts';
import { monthSection } from '../money-tables.ts';
import { tariffTable } from '../tariff-section.ts';
import { knownTotal, sentence } from '../words.ts';
import type { Measure } from './measure.ts';
import { measuresSection, paybackSection } from './measure-sections.ts';

/** Energy and cost in the order of an on-farm energy audit: present use, measures with their savings, payback. */
export function energySections(
  loaded: LoadedSeason,
  review: SeasonReview,
  measures: readonly Measure[],
  units: Units,
): Section[] {
  const within = (of: Section): Section => ({ ...of, within: true });
  return [
    { ...section('energy', 'Energy and cost', () => presentUse(loaded, review, units)), newSheet: true },
    within(section('energy-months', 'Present use by month', () => monthsOf(review, units))),
    within(section('energy-tariff', 'What the tariff charged', () => tariffOf(loaded, review, units))),
    within(section('energy-bills', 'Beside the bills', () => billsOf(review, units))),
    within(section('measures', 'Measures and what they save', () => measuresSection(review, measures, units))),
    within(section('payback', 'Payback', () => paybackSection(loaded.season.measures ?? [], measures, units))),
  ];
}

function presentUse(loaded: LoadedSeason, review: SeasonReview, units: Units): SectionBody {
  const { bins } = review;
  const energy = knownTotal(bins.map((one) => one.fan.energyKwh));
  const cost = knownTotal(bins.map((one) => one.fan.cost));
  const source = sourceSection(loaded, review);
  const of = energy.of === null ? '' : ` (${energy.of})`;
  return {
    ...source,
    lead:
      energy.total.value === null
        ? `Can’t tell what energy the fans used: ${sentence(energy.total.why ?? 'not known')}`
        : `The fans used ${units.say('energy', energy.total)}${of}${cost.total.value === null ? '; what it cost can’t be told, because no tariff prices it' : ` at ${units.say('money', cost.total)}${cost.of === null || cost.of === energy.of ? '' : ` (${cost.of})`}`}. ${source.lead}`,
    notes: [
      ...heatCostNotes(bins, units),
      'The order of this chapter is that of an on-farm energy audit (ANSI/ASABE S612): present use, measures, savings, payback. It is told of the fans alone; an audit by that standard looks at every user of energy on the farm and is signed by a qualified auditor.',
      ...(source.notes ?? []).slice(0, 1),
    ],
  };
}

function monthsOf(review: SeasonReview, units: Units): SectionBody {
  const { lead, figures } = monthSection(review.bins, units);
  const cost = knownTotal(review.bins.map((one) => one.fan.cost)).total;
  const [hours, money] = figures ?? [];
  // One figure is enough of the year: money where there are prices, else hours.
  const figure = cost.value === null ? hours : money;
  return { lead: dearestMonth(review, units) ?? lead, figures: figure === undefined ? [] : [figure] };
}

/** A number as it stands; a missing one stays missing. */
const plain = (value: number | null): Estimate =>
  value === null ? withheld('No tariff prices these fans.') : { value, interval: null, why: null };

/** The month on which most of the fans' money, else of their hours, fell. */
function dearestMonth({ bins }: SeasonReview, units: Units): string | null {
  const all = bins.flatMap(({ fan }) => fan.months);
  const months = [...new Set(all.map(({ month }) => month))].map((month) => {
    const of = all.filter((one) => one.month === month);
    const money = knownTotal(
      of.flatMap((one) => [
        one.told?.energyCost ?? plain(one.energyCost),
        one.told?.demandCost ?? plain(one.demandCost),
      ]),
    );
    return { month, money: money.total, hours: hoursIn(month, bins, units) };
  });
  const top = (pick: (one: (typeof months)[number]) => number | null) =>
    months.filter((one) => (pick(one) ?? 0) > 0).sort((a, b) => Number(pick(b)) - Number(pick(a)))[0];
  const dear = top((one) => one.money.value);
  if (dear !== undefined)
    return `Most of the money fell in ${monthText(dear.month)}: ${units.say('money', dear.money)} of energy and demand.`;
  const long = top((one) => one.hours.value);
  return long === undefined
    ? null
    : `The fans ran most in ${monthText(long.month)}: ${units.say('hours', long.hours)}.`;
}

/** Fan hours of a month, those of a fan that several bins share once. */
function hoursIn(month: string, bins: SeasonReview['bins'], units: Units): Estimate {
  const parts = fanGroups(bins).map((group): Estimate => {
    const of = group[0].fan.months.find((one) => one.month === month);
    if (group.length === 1) return of === undefined ? withheld('Not in its log.') : (of.told?.hours ?? plain(of.hours));
    const { spans } = hoursTogether(group);
    if (spans === null) return withheld(group[0].fan.hours.why ?? 'Not known.');
    const all = localMonths(units.zone, spans.startMs[0], spans.endMs[spans.endMs.length - 1]);
    const span = all.find((one) => one.month === month);
    return plain(span === undefined ? 0 : fanHoursBetween(spans, span.fromMs, span.toMs));
  });
  return knownTotal(parts).total;
}

/** What each tariff charged in all; the months stand on the page of fans, energy and cost. */
function tariffOf(loaded: LoadedSeason, review: SeasonReview, units: Units): SectionBody {
  const { lead, notes = [] } = tariffTable(loaded, review, units);
  const months = review.tariffMonths;
  if (months.length === 0) return { lead };
  const ids = [...new Set(months.map(({ tariffId }) => tariffId))];
  return {
    lead,
    table: {
      id: 'tariffs',
      caption: 'What each tariff charged, over the season',
      columns: [
        { key: 'tariff', label: 'Tariff', quantity: null },
        { key: 'months', label: 'Months', quantity: 'count' },
        { key: 'energy', label: 'Energy', quantity: 'energy' },
        { key: 'energyCost', label: 'Energy cost', quantity: 'money' },
        { key: 'demand', label: 'Demand cost', quantity: 'money' },
        { key: 'fixed', label: 'Fixed and connected', quantity: 'money', known: 'stated' },
        { key: 'topUp', label: 'To minimum', quantity: 'money' },
        { key: 'total', label: 'Total', quantity: 'money' },
      ],
      rows: ids.map((tariff) => {
        const of = months.filter(({ tariffId }) => tariffId === tariff);
        const sum = (pick: (month: (typeof of)[number]) => Estimate) => knownTotal(of.map(pick)).total;
        return {
          tariff,
          months: of.length,
          energy: sum((one) => one.told?.energyKwh ?? plain(one.energyKwh)),
          energyCost: sum((one) => one.told?.energyCost ?? plain(one.energyCost)),
          demand: of.every(({ demand }) => demand.length === 0)
            ? { value: null, why: 'This tariff has no demand charge.' }
            : sum((one) => one.told?.demandCost ?? plain(one.demand.reduce((all, { cost }) => all + cost, 0))),
          fixed: of.reduce((all, one) => all + one.fixed + one.connected, 0),
          topUp: sum((one) => one.told?.minimumTopUp ?? plain(one.minimumTopUp)),
          total: sum((one) => one.told?.total ?? plain(one.total)),
        };
      }),
    },
    notes,
  };
}

function billsOf(review: SeasonReview, units: Units): SectionBody {
  const { lead, figures, notes = [] } = billSection(review, units);
  return { lead, figures, notes };
}
