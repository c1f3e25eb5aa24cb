import { type Estimate, withheld } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import type { Bin, Goal } from '../../season/season.ts';
import { anyBushels, type Bushels, perBushel as overBushels } from '../grain/per-bushel.ts';

const GOALS: Readonly<Record<Goal, string>> = {
  dry: 'to dry the grain',
  cool: 'to cool the grain',
  condition: 'to add moisture to the grain',
  hold: 'to hold the grain as it is',
};

/**
 * An amount over the points removed (added), and that over the bushels, each with the errors of both; withheld where the bin
 * had another goal, where the points cannot be told from none, and where the grain went the other way.
 *
 * @param noun    what the amount is
 * @param points  positive as `goal` wants them
 */
export function perPoint(
  bin: Bin,
  goal: 'dry' | 'condition',
  noun: 'cost' | 'energy',
  amount: Estimate,
  points: Estimate,
  bushels: Bushels | null,
): { each: Estimate; perBushel: Estimate } {
  const word = goal === 'dry' ? 'removed' : 'added';
  const both = (why: string) => ({ each: withheld(why), perBushel: withheld(why) });
  if (bin.goal !== goal) {
    return both(
      `The fans of ${bin.name} were run ${GOALS[bin.goal]}, so ${noun === 'cost' ? 'a cost' : noun} per point ${word} has no meaning.`,
    );
  }
  if (points.value === null) return both(points.why ?? 'The points are not known.');
  if (amount.value === null) return both(amount.why ?? `The ${noun} is not known.`);
  if (points.interval === null) return both('The points have no interval, so nobody can tell them from none.');
  if (points.interval[1] < 0) {
    const other = goal === 'dry' ? 'took up water' : 'lost water';
    return both(`The grain in ${bin.name} ${other}, so there is no ${noun} per point ${word}.`);
  }
  const why = `The points ${word} in ${bin.name} cannot be told from none: their interval reaches zero.`;
  if (points.interval[0] <= 0) return both(why);
  const each = ratioInterval(amount, points, why);
  if (!anyBushels(bushels)) {
    return { each, perBushel: withheld(`The bushels in ${bin.name} are not known.`) };
  }
  return { each, perBushel: overBushels(each, bushels) };
}
