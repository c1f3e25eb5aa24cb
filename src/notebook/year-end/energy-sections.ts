import type { SeasonReview } from '../../analysis/types.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { monthText } from '../../report/date-text.ts';
import type { Section, SectionBody, Table } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { StatedMeasure } from '../../season/season.ts';
import { billSection } from '../energy-bills.ts';
import { sourceSection } from '../energy-source.ts';
import { monthSection } from '../money-tables.ts';
import { MODEL_RANGES } from '../strategy-answer.ts';
import { tariffTable } from '../tariff-section.ts';
import { counted, knownTotal, listed, sentence } from '../words.ts';
import { isClear, isPriced, type Measure, payback } from './measure.ts';
import { modelWords } from './measures-of.ts';

/** Measures told one by one in a table; the others are counted. */
const MOST = 14;

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
    const hours = knownTotal(of.map((one) => one.told?.hours ?? plain(one.hours)));
    return { month, money: money.total, hours: hours.total };
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

function measuresSection(review: SeasonReview, measures: readonly Measure[], units: Units): SectionBody {
  const clear = measures.filter(isClear);
  const told = measures.slice(0, MOST);
  const first = clear[0];
  return {
    lead:
      first === undefined
        ? `No measure shows a saving that is more than its interval. ${modelWords(review)}`
        : `${counted(clear.length, 'measure')} ${clear.length === 1 ? 'shows' : 'show'} a saving that is more than its interval; the largest, “${first.title}”, ${units.say('money', first.saving)} a year. ${modelWords(review)}`,
    table: measureTable(told),
    notes: [
      ...(told.length < measures.length
        ? [`${counted(measures.length - told.length, 'measure')} of less are left out.`]
        : []),
      ...(told.length === 0
        ? []
        : [
            'A year’s saving is this season’s, in its weather and at its prices. Savings of one bin overlap (an hour against the goal may be one that another rule would not have run): they do not add up.',
          ]),
      ...(clear.some((one) => one.from === 'by the model') ? [MODEL_RANGES] : []),
    ],
  };
}

const BY_MODEL = 'Told by the model alone.';
const BY_LOGS = 'Told by the logs.';

function measureTable(measures: readonly Measure[]): Table {
  const modelled = measures.some((one) => one.from === 'by the model');
  return {
    id: 'measures',
    caption: 'Measures, largest saving first',
    columns: [
      { key: 'measure', label: 'Measure', quantity: null },
      { key: 'energy', label: 'Energy a year', quantity: 'energy' },
      ...(modelled
        ? [{ key: 'energyModel', label: 'Energy a year', quantity: 'energy', known: 'by the model' } as const]
        : []),
      { key: 'saving', label: 'Saving a year', quantity: 'money' },
      { key: 'from', label: 'Known', quantity: null },
      { key: 'clear', label: 'More than its interval', quantity: null },
    ],
    rows: measures.map((one) => ({
      measure: one.title,
      energy: one.from === 'by the model' ? { value: null, why: BY_MODEL } : one.energy,
      energyModel: one.from === 'by the model' ? (one.energy.value ?? one.energy) : { value: null, why: BY_LOGS },
      saving: one.saving,
      from: one.from,
      clear: one.saving.value === null ? 'can’t tell' : isClear(one) ? 'yes' : 'no',
    })),
    empty: 'the season’s numbers speak for none.',
  };
}

/** Price over yearly saving, for the prices that season.yaml states. */
function paybackSection(stated: readonly StatedMeasure[], measures: readonly Measure[], units: Units): SectionBody {
  if (stated.length === 0) {
    return {
      lead: 'Can’t tell: season.yaml states no price of a measure (key measures). Payback is the price over the saving of a year.',
    };
  }
  const rows = stated.map((one) => {
    const of = measures.filter((measure) => isPriced(one, measure) && isClear(measure));
    const saving = knownTotal(of.map((measure) => measure.saving)).total;
    const names = one.binIds === null ? 'all bins' : listed(of.flatMap(({ bins }) => bins.map(({ bin }) => bin.name)));
    const years = payback(
      one.price,
      of.length === 0 ? { value: null, interval: null, why: 'No clear saving is told of this measure.' } : saving,
    );
    return { one, of, saving, names: names === '' ? listed(one.binIds ?? []) : names, years };
  });
  const known = rows
    .filter(({ years }) => years.value !== null)
    .sort((a, b) => Number(a.years.value) - Number(b.years.value));
  return {
    lead:
      known.length === 0
        ? 'Can’t tell of any measure whose price is stated; the notes of the table say why.'
        : `Soonest paid back: ${WORDS[known[0].one.measure]}, ${units.say('money', known[0].one.price)} in ${units.say('years', known[0].years)}.`,
    table: {
      id: 'payback',
      caption: 'Price over the saving of a year, without interest',
      columns: [
        { key: 'measure', label: 'Measure', quantity: null },
        { key: 'bins', label: 'For', quantity: null },
        { key: 'price', label: 'Price', quantity: 'money', known: 'stated' },
        { key: 'saving', label: 'Saving a year', quantity: 'money' },
        { key: 'years', label: 'Payback', quantity: 'years' },
      ],
      rows: rows.map(({ one, of, saving, names, years }) => ({
        measure: WORDS[one.measure],
        bins: names,
        price: one.price,
        saving: of.length === 0 ? { value: null, why: 'No clear saving is told of this measure.' } : saving,
        years,
      })),
    },
    notes: ['Prices are stated in season.yaml. Savings that may be nothing are not counted.'],
  };
}

/** What each kind of measure is called. */
const WORDS: Readonly<Record<StatedMeasure['measure'], string>> = {
  'other-rule': 'another rule for the fan',
  'fans-in-turns': 'fans in turns',
  'stop-at-target': 'stop at the target',
  'useful-hours-only': 'no hours against the goal',
  'stop-when-through': 'stop when the front is through',
};
