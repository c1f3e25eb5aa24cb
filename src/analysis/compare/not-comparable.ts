import type { Bin } from '../../season/season.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { BinReview } from '../types.ts';
import { measuredCost } from './cost-measure.ts';

const DAY_MS = 86_400_000;
/** A log may begin or end so long inside the storage time before its cost counts as partly unknown. */
const UNCOVERED_DAYS = 2;

/**
 * Why a bin's cost cannot be held against any other's, a whole sentence; null where it can.
 *
 * @param bins  all bins of the season, to find fans that serve several
 */
export function notComparable(review: BinReview, bins: readonly Bin[]): string | null {
  const { bin, failure } = review;
  if (failure !== null) return `${bin.name} could not be worked out whole: ${failure.replace(/\.?$/, '.')}`;
  const cost = measuredCost(review);
  if (cost.value === null) return cost.why ?? 'Its cost is not known.';
  if (cost.interval === null) return 'Its cost has no interval, so it cannot be told from any other.';
  return sharedFan(bin, bins) ?? uncovered(review);
}

/** A fan of two bins: how its cost parts between them is an assumption without an error. */
function sharedFan(bin: Bin, bins: readonly Bin[]): string | null {
  for (const id of bin.fanIds) {
    const others = bins.filter((other) => other.id !== bin.id && other.fanIds.includes(id));
    if (others.length === 0) continue;
    const names = others.map((other) => other.name).join(', ');
    return `Fan ${id} also serves ${names}; that each carries an equal part of its cost is an assumption, not a measurement.`;
  }
  return null;
}

/** Fan time before or after the log is in no interval. */
function uncovered({ bin, fan }: BinReview): string | null {
  const { begunMs, wholeUntilMs } = fillTimes(bin);
  const { startMs, endMs } = fan.spans;
  if (startMs.length === 0) return null;
  const days = (ms: number) => `${Math.round(ms / DAY_MS)} days`;
  const late = begunMs === null ? 0 : startMs[0] - begunMs;
  if (late > UNCOVERED_DAYS * DAY_MS)
    return `Its fan log begins ${days(late)} after the first grain came in, so part of its cost may be missing.`;
  const early = wholeUntilMs === null ? 0 : wholeUntilMs - endMs[endMs.length - 1];
  if (early > UNCOVERED_DAYS * DAY_MS)
    return `Its fan log ends ${days(early)} before the grain went out, so part of its cost may be missing.`;
  return null;
}
