import { type CrossedBin, type CrossedPart, type ShareRanges, wasRun } from './crossed-types.ts';
import { twoWay } from './two-way.ts';

type Goal = CrossedPart['goal'];

/**
 * Cost per bushel parted into bin and way, among bins of one goal and the ways that bring each of them to its target: a way
 * that is cheap because it leaves the grain wet is no cheap way, and what dries a bin is no fair measure of what cools one.
 *
 * @param goals  of each bin
 */
export function crossedParts(bins: readonly CrossedBin[], goals: ReadonlyMap<string, Goal>): CrossedPart[] {
  const run = bins.filter(wasRun);
  const kinds = [...new Set(bins.map(({ binId }) => goals.get(binId)))].filter((goal) => goal !== undefined);
  return kinds.map((goal) =>
    partOf(
      goal,
      run.filter(({ binId }) => goals.get(binId) === goal),
      bins.filter(({ binId }) => goals.get(binId) === goal).length,
    ),
  );
}

/** @param all  how many bins have the goal, those without a trusted model too */
function partOf(goal: Goal, bins: readonly CrossedBin[], all: number): CrossedPart {
  const binIds = bins.map(({ binId }) => binId);
  if (bins.length < 2) {
    const count = bins.length === 0 ? 'None' : 'Only one';
    const few =
      all === 1 && bins.length === 1
        ? 'Only one bin has this goal'
        : `${count} of the bins with this goal has a model that is trusted`;
    const why = `${few}; two are needed to tell bin from way.`;
    return { goal, binIds, wayIds: [], split: null, ranges: null, why };
  }
  const everywhere = bins[0].cells.flatMap(({ wayId }, w) =>
    bins.every(({ cells }) => cells[w].reached === true && Number(cells[w].perBushel.value) > 0) ? [{ wayId, w }] : [],
  );
  const wayIds = everywhere.map(({ wayId }) => wayId);
  if (everywhere.length < 2) {
    const count = everywhere.length === 0 ? 'No way brings' : 'Only one way brings';
    const why = `${count} each of these bins to its target; two are needed to tell bin from way.`;
    return { goal, binIds, wayIds, split: null, ranges: null, why };
  }
  const logs = bins.flatMap(({ cells }) => everywhere.map(({ w }) => Math.log(Number(cells[w].perBushel.value))));
  const runs = bins.flatMap(({ cells }) => everywhere.map(({ w }) => cells[w].runCosts ?? []));
  return {
    ...{ goal, binIds, wayIds, why: null },
    split: twoWay(logs, everywhere.length),
    ranges: rangesOf(runs, everywhere.length),
  };
}

/**
 * What the doubted runs leave open of the shares: each run of a bin beside the run of the same number of the others.
 *
 * @param runs  costs, [bins x ways], row-major, of [runs]
 */
function rangesOf(runs: readonly (readonly number[])[], width: number): ShareRanges | null {
  const count = Math.min(...runs.map(({ length }) => length));
  if (count === 0 || runs.some((costs) => !costs.every((cost) => cost > 0 && Number.isFinite(cost)))) return null;
  const shares = Array.from(
    { length: count },
    (_, i) =>
      twoWay(
        runs.map((costs) => Math.log(costs[i])),
        width,
      ).share,
  );
  const range = (of: keyof ShareRanges): [number, number] => {
    const all = shares.map((share) => share[of]);
    return [Math.min(...all), Math.max(...all)];
  };
  return { rows: range('rows'), columns: range('columns'), rest: range('rest') };
}
