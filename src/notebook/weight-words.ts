import type { WayWeight } from '../analysis/what-if/way-weights.ts';
import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import { type Estimate, turned } from '../base/estimate.ts';
import { overdryingFraction } from '../money/overdrying-weight.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { savingAt } from './strategy-saving.ts';
import type { Played } from './strategy-words.ts';

/** Told from this part of the weight on: half a percent is what meters part by. */
const LOST_TOLD = 0.005;

const weightOf = ({ whatIf: { weights } }: Played, id: string | undefined): WayWeight | null =>
  weights?.ways.find((one) => one.id === id) ?? null;

/** What the rule named dries away beyond what the season as run did, money; below 0 where it is less, 0 where nobody can tell. */
export function moreDriedAway(one: Played): number {
  const rule = weightOf(one, one.pick?.id)?.givenAway.value ?? null;
  const asRun = weightOf(one, one.whatIf.logged?.id)?.givenAway.value ?? null;
  return rule === null || asRun === null ? 0 : rule - asRun;
}

/** Over-drying is told beside a saving from this part of it on. */
const WEIGHT_TOLD = 0.1;

/** Whether what the rule named dries away beyond the season as run, or less, tells beside its saving. */
export function weightTells(one: Played): boolean {
  const more = Math.abs(moreDriedAway(one));
  return more > 0 && more >= WEIGHT_TOLD * Math.abs(Number(one.saving.value));
}

/** What the rule named would have saved with over-drying counted on both sides, money; null where that is not told apart from its saving. */
export function savingCounted(one: Played): Estimate | null {
  const of = weightOf(one, one.pick?.id);
  if (of === null || one.saving.value === null || !weightTells(one)) return null;
  return savingAt(one, of.beyondLogged);
}

/** What a rule leaves its grain drier than asked for: weight that is not sold, and in no rule's cost. */
export function drierSaid(one: Played, units: Units): string {
  const { review, whatIf, pick } = one;
  const belowWb = whatIf.weights?.belowWb ?? review.bin.grain.targetMoistureWb;
  if (pick === null || review.bin.goal !== 'dry' || belowWb === null) return '';
  const { endMoistureWb } = pick.outcome;
  const lost = overdryingFraction(belowWb, endMoistureWb);
  const ended = `It would have ended at ${units.say('moisture', endMoistureWb)}`;
  const below = `below ${units.say('moisture', belowWb)}`;
  const weight = weightOf(one, pick.id);
  if (weight === null)
    return lost < LOST_TOLD
      ? ''
      : ` ${ended}: ${units.say('share', lost)} of its weight lost by over-drying ${below}, in no rule’s cost.`;
  const asRun = weightOf(one, whatIf.logged?.id);
  const ranDrier = overdryingFraction(belowWb, whatIf.logged?.outcome.endMoistureWb ?? belowWb) >= LOST_TOLD;
  const other = otherSaid(one, weight, units);
  const counted = countedSaid(one, units);
  if (lost < LOST_TOLD && !ranDrier && other === null && counted === '') return '';
  const beside = asRun === null ? '' : `; as run ${units.say('money', asRun.givenAway.value)} by the model`;
  const said = `${ended}: ${units.say('money', weight.givenAway)} lost by over-drying ${below}, in no rule’s cost${beside}.`;
  return [` ${said}`, other ?? leastSaid(one), counted].filter((each) => each !== '').join(' ');
}

/** The other rule that comes to less with the weight counted; null where that is the one named, or nobody can tell. */
export function lessTogether({ whatIf, pick }: Played): (StrategyOutcome & { weight: WayWeight }) | null {
  const { weights, strategies } = whatIf;
  const other = strategies.find(({ id }) => id === weights?.pick);
  const of = weights?.ways.find(({ id }) => id === other?.id);
  const named = weights?.ways.find(({ id }) => id === pick?.id)?.together.value ?? null;
  if (other === undefined || of === undefined || other.id === pick?.id) return null;
  // The least above the cheapest over all runs may be the dearer one in the bin as fitted: no sentence to tell in one number each.
  if (named === null || !(Number(of.together.value) < named)) return null;
  return { ...other, weight: of };
}

function otherSaid(one: Played, named: WayWeight, units: Units): string | null {
  const other = lessTogether(one);
  if (other === null) return null;
  const least = one.whatIf.weights?.clear === true ? 'comes to the least' : 'may come to the least';
  return `With it counted “${other.title.toLowerCase()}” ${least}: ${units.say('money', other.weight.together.value)} together, this rule ${units.say('money', named.together.value)}.`;
}

/** That the rule named is the one with the weight counted too, no surer than the runs have it. */
function leastSaid({ whatIf: { weights }, pick, rivals }: Played): string {
  if (weights === null || weights.pick !== pick?.id) return '';
  return `With it counted the rule ${weights.clear ? 'comes' : 'may come'} to the least${rivals.length === 0 ? ' as well' : ''}.`;
}

/** What is left of the saving with the weight counted on both sides, where the season as run reached its target. */
function countedSaid(one: Played, units: Units): string {
  const left = savingCounted(one);
  if (left === null || left.value === null || one.whatIf.logged?.outcome.reachedTarget !== true) return '';
  const [low, high] = left.interval ?? [left.value, left.value];
  if (low <= 0 && high >= 0) return 'Counted on both sides, there is no clear difference to how it was run.';
  return left.value > 0
    ? `Counted on both sides, the rule comes to ${units.say('money', left)} less than as it was run.`
    : `Counted on both sides, the rule comes to ${units.say('money', turned(left))} more than as it was run.`;
}

/** The rule that comes to less than as run with the weight counted, of a bin whose fans ran cheapest as they did; null where there is none. */
export function runBetterSaid(one: Played, units: Units): string | null {
  const { pick, whatIf } = one;
  const asRun = weightOf(one, whatIf.logged?.id);
  // The rule named first: the year-end report has its number.
  for (const id of [pick?.id, whatIf.weights?.pick]) {
    const rule = whatIf.strategies.find((each) => each.id === id);
    const of = weightOf(one, rule?.id);
    if (rule === undefined || of === null || asRun === null) continue;
    const left = savingAt(one, of.beyondLogged);
    if (left.value === null || left.value <= 0) continue;
    const may = (left.interval?.[0] ?? 0) > 0 ? 'would have come' : 'may have come';
    const other = rule === pick ? otherSaid(one, of, units) : null;
    return `with over-drying counted, ${units.say('money', asRun.givenAway.value)} as run and ${units.say('money', of.givenAway)} by “${rule.title.toLowerCase()}”, that rule ${may} to ${units.say('money', left)} less.${other === null ? '' : ` ${other}`}`;
  }
  return null;
}

/** Every way of a bin with the weight counted that it dries away; none where neither the season as run nor a way that reaches the target dries away a weight that is told, and it makes no other rule the cheapest. */
export function weightTables(one: Played, units: Units): Table[] {
  const { review, whatIf } = one;
  const { weights, logged, strategies } = whatIf;
  if (weights === null || logged === null) return [];
  const { belowWb } = weights;
  const ways = [logged, ...strategies];
  const tells = ({ id, outcome }: (typeof ways)[number]) =>
    (outcome.reachedTarget || id === logged.id) && overdryingFraction(belowWb, outcome.endMoistureWb) >= LOST_TOLD;
  if (!ways.some(tells) && lessTogether(one) === null) return [];
  return [
    {
      id: `weights-${review.bin.id}`,
      caption: `${review.bin.name}: with the over-drying below ${units.say('moisture', belowWb)}, at the stated price`,
      folded: true,
      columns: [
        { key: 'way', label: 'Way', quantity: null },
        { key: 'cost', label: 'Cost', quantity: 'money', known: 'by the model' },
        { key: 'away', label: 'Over-drying', quantity: 'money', known: 'by the model' },
        { key: 'together', label: 'Together', quantity: 'money', known: 'by the model' },
        { key: 'reaches', label: 'Target', quantity: null },
      ],
      rows: inOrder(one, ways).map((way) => {
        const of = weightOf(one, way.id);
        return {
          way: way.title,
          cost: way.cost,
          away: of === null ? NOT_KNOWN : of.givenAway,
          together: of === null ? NOT_KNOWN : of.together,
          reaches: way.outcome.reachedTarget ? 'reached' : 'not reached',
        };
      }),
    },
  ];
}

/** Those that reach the target first, each group by what they come to: a way that does not get there is not the least. */
function inOrder(one: Played, ways: readonly StrategyOutcome[]): StrategyOutcome[] {
  const together = ({ id }: StrategyOutcome) => weightOf(one, id)?.together.value ?? Number.POSITIVE_INFINITY;
  const reaches = ({ outcome }: StrategyOutcome) => Number(outcome.reachedTarget);
  return [...ways].sort((a, b) => reaches(b) - reaches(a) || together(a) - together(b));
}

const NOT_KNOWN: Cell = { value: null, why: 'Not known.' };
