import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { costByBin } from '../report/figures/cost-by-bin.ts';
import type { Figure } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';

/** A bin and what something cost in it. */
export interface BinCost {
  name: string;
  cost: Estimate;
}

/** More bins than this are counted in a title. */
const NAMED = 3;

/** Bins whose cost is known, cheapest first. */
export function byCost(bins: readonly BinCost[]): BinCost[] {
  return bins.filter(({ cost }) => cost.value !== null).sort((a, b) => (a.cost.value ?? 0) - (b.cost.value ?? 0));
}

/** `Lane 42 … cheapest`, and who cannot be told from it; null where no cost is known. */
export function cheapestTitle(bins: readonly BinCost[], did: string): string | null {
  const [first, ...rest] = byCost(bins);
  if (first === undefined) return null;
  if (rest.length === 0) return `Only ${first.name} has this cost`;
  const high = first.cost.interval?.[1] ?? first.cost.value ?? 0;
  const near = rest.filter(({ cost }) => (cost.interval?.[0] ?? cost.value ?? 0) <= high).map(({ name }) => name);
  if (near.length === 0) return `${first.name} ${did}`;
  // A title names a few bins; the figure shows the others.
  const others = near.length <= NAMED ? listed(near) : `${near.length} others`;
  return `${first.name} ${did}, though ${others} may be no dearer`;
}

/** `drying cost from 0.027 USD a bushel-point (…) in Lane 42 to …`; null where no cost is known. */
export function costSpan(bins: readonly BinCost[], quantity: Quantity, units: Units): string | null {
  const known = byCost(bins);
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return null;
  const said = ({ name, cost }: BinCost) => `${units.say(quantity, cost)} in ${name}`;
  if (first !== last && units.say(quantity, first.cost) === units.say(quantity, last.cost))
    return `${units.say(quantity, first.cost)} in each of ${known.length} bins`;
  return first === last ? said(first) : `from ${said(first)} to ${said(last)}`;
}

/** What a point cost, or that there was none to price, or that it can't be told. */
export function dryingSaid(bins: readonly BinReview[], costs: readonly BinCost[], units: Units): string {
  const span = costSpan(costs, 'money per grain point', units);
  if (span !== null) return `drying cost ${span}`;
  if (bins.length > 0 && bins.every((one) => one.bin.goal !== 'dry' && one.failure === null))
    return 'the fans were not run to dry, so no point has a price';
  const why = costs.length === 1 ? costs[0].cost.why : null;
  if (why === null) return 'what a point cost can’t be told of any bin';
  return `what a point cost can’t be told. ${why.replace(/\.$/, '')}`;
}

/** Bins by cost under a table that says why some have none; no figure where there is nothing to compare. */
export function costFigure(
  id: string,
  quantity: Quantity,
  did: string,
  bins: readonly BinCost[],
  units: Units,
): Figure[] {
  const title = cheapestTitle(bins, did);
  return title === null || bins.length < 2 ? [] : [costByBin({ id, title, quantity, bins, reasonsAbove: true }, units)];
}
