import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import { agreeing } from '../../base/agreeing.ts';
import { listed } from '../../base/listed.ts';
import type { SectionBody, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { StatedMeasure } from '../../season/season.ts';
import { reaching, thoughSaid } from '../may-be-alike.ts';
import { MODEL_RANGES } from '../strategy-answer.ts';
import { counted, knownTotal, quoted } from '../words.ts';
import { isClear, isPriced, type Measure, payback } from './measure.ts';
import { modelWords } from './measures-of.ts';

/** Measures told one by one in a table; the others are counted. */
const MOST = 14;

/** What could be done, by its saving of a year. */
export function measuresSection(review: SeasonReview, measures: readonly Measure[], units: Units): SectionBody {
  const clear = measures.filter(isClear);
  const told = measures.slice(0, MOST);
  const first = clear[0];
  const alike =
    first === undefined
      ? []
      : reaching(
          { name: '', of: first.saving },
          clear.slice(1).map(({ title, saving }) => ({ name: quoted(title), of: saving })),
        );
  return {
    lead:
      first === undefined
        ? `No measure shows a saving whose interval stays above zero. ${modelWords(review)}`
        : `${counted(clear.length, 'measure')} ${clear.length === 1 ? 'shows' : 'show'} a saving whose interval stays above zero; the largest, “${first.title}”, ${units.say('money', first.saving)} a year${thoughSaid(alike, 'may save as much')}. ${modelWords(review)}`,
    table: measureTable(told),
    notes: [
      ...(told.length < measures.length
        ? [
            `${counted(measures.length - told.length, 'measure')} of less ${agreeing(measures.length - told.length, 'is', 'are')} left out.`,
          ]
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
      { key: 'clear', label: 'Surely above zero', quantity: null },
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
export function paybackSection(
  stated: readonly StatedMeasure[],
  measures: readonly Measure[],
  bins: readonly BinReview[],
  units: Units,
): SectionBody {
  const nameOf = (id: string) => bins.find(({ bin }) => bin.id === id)?.bin.name ?? id;
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
    return { one, of, saving, names: names === '' ? listed((one.binIds ?? []).map(nameOf)) : names, years };
  });
  const known = rows
    .filter(({ years }) => years.value !== null)
    .sort((a, b) => Number(a.years.value) - Number(b.years.value));
  return {
    lead:
      known.length === 0
        ? 'Can’t tell of any measure whose price is stated; the notes of the table say why.'
        : `Soonest paid back: ${WORDS[known[0].one.measure]}, ${units.say('money', known[0].one.price)}, as stated, in ${units.say('years', known[0].years)}.`,
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
