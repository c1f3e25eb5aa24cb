import type { SeasonReview } from '../../analysis/types.ts';
import type { Estimate } from '../../base/estimate.ts';
import type { Section, SectionBody } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { plain } from '../dearest-month.ts';
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
    within(
      section('payback', 'Payback', () => paybackSection(loaded.season.measures ?? [], measures, review.bins, units)),
    ),
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
  return { lead, figures: figure === undefined ? [] : [figure] };
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
