import { both, plain, reason } from '../summary-numbers.ts';
import type { SeasonReview } from '../types.ts';
import type { CrossedSummary } from './crossed-shape.ts';
import type { CrossedCell } from './crossed-types.ts';
import { NOT_ASKED } from './what-if-summary.ts';

/** The block `crossed`: every bin's way on every bin. */
export function crossedSummary({ crossed, whatIf }: Pick<SeasonReview, 'crossed' | 'whatIf'>): CrossedSummary {
  if (crossed === undefined) {
    const why = whatIf === undefined ? NOT_ASKED : 'The runs of this comparison could not be made.';
    return { ways: [], runs: [], parts: [], leftOut: [], why };
  }
  const { ways, bins, parts } = crossed;
  const runs = bins.flatMap(({ binId, cells }) => cells.map((cell) => runOf(binId, cell)));
  return {
    ways: ways.map(({ id, binIds, why }) => ({ id, bins: [...binIds], why })),
    runs,
    parts: parts.map(({ goal, binIds, wayIds, split, why }) => ({
      goal,
      bins: [...binIds],
      ways: [...wayIds],
      binShare: plain(split?.share.rows),
      wayShare: plain(split?.share.columns),
      restShare: plain(split?.share.rest),
      why,
    })),
    leftOut: bins
      .filter(({ cells }) => cells.length === 0)
      .map(({ binId, why }) => ({ bin: binId, why: why ?? 'No reason is known.' })),
    why: runs.length > 0 ? null : 'No bin has a model that can be trusted.',
  };
}

function runOf(bin: string, cell: CrossedCell): CrossedSummary['runs'][number] {
  const { wayId, own, perBushel, perBushelPoint, overOwn, reached, reaching, runs } = cell;
  return {
    bin,
    way: wayId,
    own,
    ...both('costPerBushel', perBushel),
    ...both('costPerBushelPoint', perBushelPoint),
    ...both('overOwn', overOwn),
    reachedTarget: reached,
    runsReaching: reaching,
    runs,
    why: reason(null, perBushel, perBushelPoint, overOwn),
  };
}
