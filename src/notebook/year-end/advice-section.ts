import type { SeasonReview } from '../../analysis/types.ts';
import { agreeing } from '../../base/agreeing.ts';
import type { Entry, SectionBody } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { picksSaid } from '../strategy-answer.ts';
import { counted } from '../words.ts';
import { grouped } from './grouped.ts';
import { isClear, isPriced, type Measure, payback, WORTH, worthTelling } from './measure.ts';
import { modelWords } from './measures-of.ts';

/** Told one by one; the others stand in the table of measures. */
const MOST = 10;

/** What to do next season: each with what it saves, how sure that is, what it costs, and what to mind. */
export function adviceSection(
  { season }: LoadedSeason,
  review: SeasonReview,
  measures: readonly Measure[],
  units: Units,
): SectionBody {
  const worth = worthTelling(measures, review.bins);
  const clear = grouped(worth, (saving) => units.say('money', saving));
  const told = clear.slice(0, MOST);
  const small = measures.filter((one) => isClear(one) && !worth.includes(one));
  const rest = measures.filter((one) => !isClear(one));
  return {
    lead:
      told.length === 0
        ? `Nothing in the season’s numbers speaks clearly for a change: no saving has an interval that stays above zero. ${modelWords(review)}`
        : told.length === 1
          ? `1 recommendation: it would save ${units.say('money', told[0].saving)} a year.`
          : `${counted(told.length, 'recommendation')}, largest saving first, from ${units.say('money', told[0].saving)} to ${units.say('money', told[told.length - 1].saving)} a year each. They overlap and do not add up.`,
    entries: told.map((one, i): Entry => {
      const stated = (season.measures ?? []).filter((each) => isPriced(each, one));
      return {
        term: `${i + 1}. ${one.title}`,
        text: `${one.todo} ${one.seen}`,
        details: [
          `Saving: ${units.say('money', one.saving)} a year${energySaid(one, units)}, ${one.from}. ${costSaid(stated, one, units)}`,
          ...(one.bins.length > 1 && one.kind !== 'fans-in-turns'
            ? [
                `By bin: ${worth
                  .filter((each) => each.kind === one.kind)
                  .map((each) => `${each.bins[0].bin.name} ${units.say('money', each.saving)}`)
                  .join('; ')}.`,
              ]
            : []),
          `Mind: ${one.cautions.join(' ')}`,
        ],
      };
    }),
    notes: [
      ...(told.some(({ kind }) => kind === 'other-rule') ? [picksSaid()] : []),
      ...(clear.length > told.length
        ? [
            `${counted(clear.length - told.length, 'more measure')} with a clear saving ${agreeing(clear.length - told.length, 'stands', 'stand')} in the table of measures.`,
          ]
        : []),
      ...(small.length === 0
        ? []
        : [
            `Clear, but each under the limit of ${units.say('share', WORTH)} of what the fans cost: ${counted(small.length, 'measure')} of the table of measures.`,
          ]),
      ...rest
        .filter((one) => one.saving.value !== null)
        .slice(0, 4)
        .map((one) => `Not recommended: ${one.title}. ${units.say('money', one.saving)} a year may be nothing.`),
      ...rest
        .filter((one) => one.saving.value === null)
        .slice(0, 8)
        .map((one) =>
          one.kind === 'other-rule' && one.seen.startsWith('Withheld')
            ? `Withheld: ${one.title}. ${one.saving.why ?? ''}`
            : `No saving is told of ${one.title}. ${one.seen}${untoldSaid(one)}`,
        ),
    ],
  };
}

/** Why, unless what was seen ends with it. */
function untoldSaid({ seen, saving: { why } }: Measure): string {
  return why === null || seen.endsWith(why) ? '' : ` ${why}`;
}

/** Price and payback as far as season.yaml states a price for this measure alone. */
function costSaid(stated: NonNullable<LoadedSeason['season']['measures']>, one: Measure, units: Units): string {
  const own = stated.find(({ binIds }) => binIds?.length === 1 || (binIds === null && one.kind === 'fans-in-turns'));
  if (own !== undefined) {
    return `Cost: ${units.say('money', own.price)}, as stated; payback ${units.say('years', payback(own.price, one.saving))}.`;
  }
  return stated.length > 0
    ? `Cost: ${units.say('money', stated[0].price)}, as stated for several bins; see Payback.`
    : 'Cost: not stated, so that payback can’t be told.';
}

function energySaid({ energy }: Measure, units: Units): string {
  return energy.value === null || energy.value < 0.5 ? '' : ` and ${units.say('energy', energy)}`;
}
