import { turned } from '../../base/estimate.ts';
import type { Bin } from '../../season/season.ts';
import { ofOneFilling } from '../grain/one-filling.ts';
import type { Bushels } from '../grain/per-bushel.ts';
import type { BinFan, BinMoisture, UnitCosts } from '../types.ts';
import { perPoint } from './per-point.ts';
import { ofLoggedTime } from './unlogged-time.ts';

/**
 * What a point cost: the bin's cost over its points removed (goal dry) or added (goal condition), and that over its bushels.
 * The intervals join the errors of cost and points. For other goals a cost per point has no meaning.
 *
 * @param bushels  legal bushels as filled, with their interval; null where not known
 */
export function unitCosts(
  bin: Bin,
  fan: Pick<BinFan, 'cost'> & Partial<Pick<BinFan, 'spans'>>,
  moisture: Pick<BinMoisture, 'pointsRemoved'> & Partial<Pick<BinMoisture, 'start' | 'end'>>,
  bushels: Bushels | null,
): UnitCosts {
  const cost = ofOneFilling(ofLoggedTime(fan.cost, fan, moisture), bin);
  const removed = perPoint(bin, 'dry', 'cost', cost, moisture.pointsRemoved, bushels);
  const added = perPoint(bin, 'condition', 'cost', cost, turned(moisture.pointsRemoved), bushels);
  return {
    costPerPoint: removed.each,
    perBushelPoint: removed.perBushel,
    costPerPointAdded: added.each,
    perBushelPointAdded: added.perBushel,
    why: removed.each.why ?? removed.perBushel.why,
    whyAdded: added.each.why ?? added.perBushel.why,
  };
}
