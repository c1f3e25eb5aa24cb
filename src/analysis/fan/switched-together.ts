import type { FanSpans } from '../types.ts';
import { byTheClock } from './edge-windows.ts';
import { type Edge, middleOf, widthOf } from './fan-edge.ts';
import { agreement } from './log-agreement.ts';

const FEWEST_TOGETHER = 3;
/** Starts that coincide beyond chance, as a part of the fewer starts of the two fans: above it one controller switches both. */
const LEAST_SHARE = 1 / 3;
/** Coincidences must exceed those of chance by this factor. */
const BEYOND_CHANCE = 3;
/** Logs of two fans that agree in this part of the runs and in this part of the rests are of fans switched together. */
const LEAST_AGREEMENT = 0.9;
/** Differences between two logs of the same switching that vary less than this part of their windows do not vary. */
const STILL_PART = 0.1;
/** A fan of whose starts (stops) this part follows the one before at the same time of day is switched by a clock. */
const CLOCKWORK = 0.7;

/** An edge in a cluster of edges that are one switching. */
export interface Member {
  edge: Edge;
  /** how much later than the first fan of its cluster it is switched */
  lagMs: number;
}

/** Edges that are one switching, an edge alone being a cluster of its own; and the pairs of fans switched together, with their lag. */
export function clustersOf(
  edges: readonly (readonly Edge[])[],
  fans: readonly FanSpans[],
): { clusters: Member[][]; together: Map<string, number> } {
  const together = new Map<string, number>();
  const clusterOf = new Map<Edge, Member[]>();
  for (const edge of edges.flat()) clusterOf.set(edge, [{ edge, lagMs: 0 }]);
  for (let f = 0; f < edges.length; f++) {
    for (let g = f + 1; g < edges.length; g++) {
      const pairs = pairsOf(edges[f], edges[g]);
      const seen = agreement(fans[f], fans[g]);
      const alike = Math.min(seen.runs, seen.rests) >= LEAST_AGREEMENT;
      if (pairs.length === 0 || !(alike || areTogether(pairs, edges[f], edges[g], fans[f], fans[g]))) continue;
      const lagMs = lagOf(pairs);
      together.set(`${f} ${g}`, lagMs);
      for (const [a, b] of pairs) {
        const into = clusterOf.get(a) as Member[];
        // The third of three fans has come in by the first already.
        if (into.some(({ edge }) => edge.fan === g) || (clusterOf.get(b) as Member[]).length > 1) continue;
        const own = into.find(({ edge }) => edge === a) as Member;
        into.push({ edge: b, lagMs: own.lagMs + lagMs });
        clusterOf.set(b, into);
      }
    }
  }
  return { clusters: [...new Set(clusterOf.values())], together };
}

/** Middles of two windows that may hold one switching lie no further apart; half of their mean width is left for a lag. */
const reachOf = (a: Edge, b: Edge) => (3 / 4) * (widthOf(a) + widthOf(b));

/** Nearest edges of two fans whose windows meet, or miss each other by less than half a window; each edge once. */
function pairsOf(first: readonly Edge[], second: readonly Edge[]): [Edge, Edge][] {
  const pairs: [Edge, Edge][] = [];
  let j = 0;
  for (const a of first) {
    while (j < second.length && middleOf(second[j]) < middleOf(a) - reachOf(a, second[j])) j += 1;
    if (j >= second.length) break;
    let best = j;
    const away = (i: number) => Math.abs(middleOf(second[i]) - middleOf(a));
    while (best + 1 < second.length && away(best + 1) < away(best)) best += 1;
    if (away(best) > reachOf(a, second[best])) continue;
    pairs.push([a, second[best]]);
    j = best + 1;
  }
  return pairs;
}

function areTogether(
  pairs: readonly [Edge, Edge][],
  first: readonly Edge[],
  second: readonly Edge[],
  a: FanSpans,
  b: FanSpans,
): boolean {
  const fewer = Math.min(first.length, second.length);
  if (pairs.length < FEWEST_TOGETHER || fewer === 0) return false;
  const end = (spans: FanSpans) => spans.endMs[spans.endMs.length - 1];
  const both = Math.min(end(a), end(b)) - Math.max(a.startMs[0], b.startMs[0]);
  const reach = pairs.reduce((sum, [x, y]) => sum + 2 * reachOf(x, y), 0) / pairs.length;
  const byChance = (first.length * second.length * reach) / Math.max(both, reach);
  return pairs.length - byChance >= LEAST_SHARE * fewer && pairs.length >= BEYOND_CHANCE * byChance;
}

/**
 * How much later the second fan is switched: the mean over all pairs, each unsure by its windows. A clock that switches
 * every day at one moment meets the samples always at one place, so that half a window of the mean may be the logs' and not
 * the fans': that much of it counts as no lag.
 */
function lagOf(pairs: readonly [Edge, Edge][]): number {
  const lags = pairs.map(([a, b]) => middleOf(b) - middleOf(a));
  const mean = lags.reduce((sum, lag) => sum + lag, 0) / lags.length;
  const varied = Math.sqrt(lags.reduce((sum, lag) => sum + (lag - mean) ** 2, 0) / lags.length);
  const width = pairs.reduce((sum, [a, b]) => sum + (widthOf(a) + widthOf(b)) / 2, 0) / pairs.length;
  const sampled = [0, 1].filter((side) => pairs.every((pair) => pair[side].sampled));
  if (sampled.length === 2 && varied < STILL_PART * width) return 0;
  if (
    byTheClock(
      pairs.map(([a]) => middleOf(a)),
      width,
    ) < CLOCKWORK
  )
    return mean;
  const unsure = sampled.reduce((sum, side) => sum + pairs.reduce((all, pair) => all + widthOf(pair[side]), 0), 0);
  return Math.sign(mean) * Math.max(0, Math.abs(mean) - unsure / pairs.length / 2);
}
