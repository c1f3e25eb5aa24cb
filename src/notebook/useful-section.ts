import { fanGroups } from '../analysis/energy/fan-groups.ts';
import { hoursTogether } from '../analysis/energy/hours-together.ts';
import type { BinReview } from '../analysis/types.ts';
import { type Estimate, estimate } from '../base/estimate.ts';
import type { SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { usefulFigure } from './useful-figure.ts';
import { type BinHours, classTable, entryTable, groupTables, usefulTable, withHours } from './useful-tables.ts';
import { FIRST_WORDS, GOAL_RULES } from './useful-words.ts';
import { type KnownTotal, known, knownTotal } from './words.ts';

/** Hours of all bins' fans against their goals; an hour of a fan that several bins share counts once. */
export function againstTotal(bins: readonly BinReview[]): KnownTotal {
  const against = (one: BinReview) => one.useful?.against ?? { value: null, interval: null, why: noLog(one) };
  const groups = fanGroups(bins);
  const { total } = knownTotal(groups.map((group) => againstAny(group.map(against), hoursTogether(group).hours)));
  return { total, of: knownTotal(bins.map(against)).of };
}

/** Hours against any of the goals of bins that share fans. Which hours of two bins were the same is not told: at least the most of one, at most all. */
function againstAny(parts: readonly Estimate[], hours: Estimate): Estimate {
  const told = parts.map(known).filter((part) => part !== null);
  if (parts.length === 1 || told.length === 0) return parts[0];
  const ends = (at: 0 | 1) => told.map(({ value, interval }) => interval?.[at] ?? value);
  const value = Math.max(...told.map((part) => part.value));
  const all = ends(1).reduce((sum, end) => sum + end, 0);
  const most = Math.min(all, hours.interval?.[1] ?? hours.value ?? all);
  return estimate(value, Math.max(...ends(0)), Math.max(value, most));
}

/** What each fan hour could do to the grain it met: bins side by side, the figure, and the tables behind it. */
export function usefulSection(bins: readonly BinReview[], units: Units): SectionBody {
  const of: BinHours[] = bins.map((review) => ({ review, useful: review.useful ?? null }));
  const told = withHours(of);
  const figure = usefulFigure(of, units);
  return {
    lead: leadOf(bins, units),
    table: usefulTable(of),
    figures: figure === null ? [] : [figure],
    tables: told.length === 0 ? [] : [classTable(of), entryTable(of), ...groupTables(of, units)],
    notes: told.length === 0 ? [] : notesOf(told, units),
  };
}

function leadOf(bins: readonly BinReview[], units: Units): string {
  const against = againstTotal(bins);
  const cost = knownTotal(
    bins.map((one) => one.useful?.againstCost ?? { value: null, interval: null, why: noLog(one) }),
  );
  const within = ({ of }: KnownTotal) => (of === null ? '' : ` in ${of}`);
  if (against.total.value === null)
    return `Can’t tell what the fan hours could do to the grain: ${against.total.why ?? ''}`;
  const money =
    cost.total.value === null
      ? 'what their energy cost can’t be told'
      : `their energy cost ${units.say('money', cost.total)}${cost.of === against.of ? '' : within(cost)}`;
  return `${units.say('hours', against.total)} of the fans${within(against)} pushed air that worked against the bin’s goal; ${money}.`;
}

function noLog(review: BinReview): string {
  return review.failure ?? review.fan.hours.why ?? 'No fan of this bin has a log.';
}

function notesOf(told: ReturnType<typeof withHours>, units: Units): string[] {
  const { limits } = told[0].useful;
  const goals = [...new Set(told.map(({ review }) => review.bin.goal))];
  const usual = limits.stated
    ? 'as useful_hours in season.yaml states'
    : 'the kit’s choice; useful_hours in season.yaml sets others';
  return [
    `An hour counts as drying or rewetting when the moisture that grain would take in its air lies by the limit of ${units.say('points', 100 * limits.moistureWb)} or more from the mean of the grain, and as cooling or warming when the temperature that the air leads the grain to lies by that of ${units.say('temperature difference', limits.temperatureK)} or more from its mean (${usual}).`,
    FIRST_WORDS,
    ...goals.map((goal) => GOAL_RULES[goal]),
    'Off, would have paid: the fan stood still while the air could have worked for the goal and the grain was short of its target. What running would have cost is not in it.',
    'The cost is each hour’s own energy at its own price, without demand, connected load and heat.',
    ...told.flatMap(({ review, useful }) => useful.notes.map((note) => `${review.bin.name}: ${note}`)),
  ];
}
