import type { WayWeight } from '../analysis/what-if/way-weights.ts';
import { isAboveNothing, turned } from '../base/estimate.ts';
import { overdryingFraction } from '../money/overdrying-weight.ts';
import type { Units } from '../report/units.ts';
import { savingAt } from './strategy-saving.ts';
import type { Played } from './strategy-words.ts';
import { LOST_TOLD, lessTogether, savingCounted, weightOf } from './weight-sums.ts';

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
    const may = isAboveNothing(left) ? 'would have come' : 'may have come';
    const other = rule === pick ? otherSaid(one, of, units) : null;
    return `with over-drying counted, ${units.say('money', asRun.givenAway.value)} as run and ${units.say('money', of.givenAway)} by “${rule.title.toLowerCase()}”, that rule ${may} to ${units.say('money', left)} less.${other === null ? '' : ` ${other}`}`;
  }
  return null;
}
