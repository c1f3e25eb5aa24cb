import { type Estimate, withheld } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import type { Bin, Goal } from '../../season/season.ts';
import { anyBushels, type Bushels, perBushel as overBushels } from '../grain/per-bushel.ts';
import type { BinFan, BinMoisture, UnitCosts } from '../types.ts';

const GOALS: Readonly<Record<Goal, string>> = {
  dry: 'to dry the grain',
  cool: 'to cool the grain',
  condition: 'to add moisture to the grain',
  hold: 'to hold the grain as it is',
};

/**
 * What a point cost: the bin's cost over its points removed (goal dry) or added (goal condition), and that over its bushels.
 * The intervals join the errors of cost and points. For other goals a cost per point has no meaning.
 *
 * @param bushels  legal bushels as filled, with their interval; null where not known
 */
export function unitCosts(
  bin: Bin,
  fan: Pick<BinFan, 'cost'>,
  moisture: Pick<BinMoisture, 'pointsRemoved'>,
  bushels: Bushels | null,
): UnitCosts {
  const removed = perPoint(bin, 'dry', fan.cost, moisture.pointsRemoved, bushels);
  const added = perPoint(bin, 'condition', fan.cost, turned(moisture.pointsRemoved), bushels);
  return {
    costPerPoint: removed.each,
    perBushelPoint: removed.perBushel,
    costPerPointAdded: added.each,
    perBushelPointAdded: added.perBushel,
    why: removed.each.why ?? removed.perBushel.why,
    whyAdded: added.each.why ?? added.perBushel.why,
  };
}

function perPoint(
  bin: Bin,
  goal: 'dry' | 'condition',
  cost: Estimate,
  points: Estimate,
  bushels: Bushels | null,
): { each: Estimate; perBushel: Estimate } {
  const word = goal === 'dry' ? 'removed' : 'added';
  const both = (why: string) => ({ each: withheld(why), perBushel: withheld(why) });
  if (bin.goal !== goal) {
    return both(`The fans of ${bin.name} were run ${GOALS[bin.goal]}, so a cost per point ${word} has no meaning.`);
  }
  if (points.value === null) return both(points.why ?? 'The points are not known.');
  if (cost.value === null) return both(cost.why ?? 'The cost is not known.');
  if (points.interval === null) return both('The points have no interval, so nobody can tell them from none.');
  if (points.interval[1] < 0) {
    const other = goal === 'dry' ? 'took up water' : 'lost water';
    return both(`The grain in ${bin.name} ${other}, so there is no cost per point ${word}.`);
  }
  const why = `The points ${word} in ${bin.name} cannot be told from none: their interval reaches zero.`;
  if (points.interval[0] <= 0) return both(why);
  const each = ratioInterval(cost, points, why);
  if (!anyBushels(bushels)) {
    return { each, perBushel: withheld(`The bushels in ${bin.name} are not known.`) };
  }
  return { each, perBushel: overBushels(each, bushels) };
}

/** Removed told as added. */
function turned({ value, interval, why }: Estimate): Estimate {
  return {
    value: value === null ? null : -value,
    interval: interval === null ? null : [-interval[1], -interval[0]],
    why,
  };
}
