import type { FanSpans } from '../types.ts';
import { edgesOf, middleOf, widthOf } from './fan-edge.ts';
import { clustersOf, type Member } from './switched-together.ts';
import { unseenRuns, withRests } from './unseen-runs.ts';

/**
 * The fans of a bin with their starts and stops where they are to be expected within their windows, before they are laid
 * together.
 *
 * A start alone is expected in the middle of its window. Of two fans that one controller starts, each log says when that
 * was; taking the earlier start and the later stop of two such guesses would make every run too long. Fans whose starts
 * (or stops) coincide far beyond chance are therefore taken as switched together, at a constant lag that the logs show, and
 * their edges are set to the middle of what both windows leave. A run that only one of two such logs saw fell between two
 * samples of the other: its edges lie between these. Fans that run on their own need no such care: the earlier
 * ones of their starts are too early as often as too late.
 *
 * @returns  the fans unchanged where none has windows
 */
export function edgesTogether(fans: readonly FanSpans[]): readonly FanSpans[] {
  if (fans.length < 2 || fans.every(({ startFromMs }) => startFromMs === undefined)) return fans;
  const moved = fans.map(({ startMs }) => startMs.slice());
  const lags = new Map<string, { on: number; off: number }>();
  for (const on of [true, false]) {
    const edges = fans.map((spans, fan) => edgesOf(spans, fan, on));
    const { clusters, together } = clustersOf(edges, fans);
    for (const cluster of clusters) {
      const commonMs = commonOf(cluster);
      for (const { edge, lagMs } of cluster) {
        const ms = commonMs + lagMs;
        moved[edge.fan][edge.k] = Math.min(edge.toMs, Math.max(edge.fromMs, ms));
      }
    }
    for (const [pair, lagMs] of together) {
      lags.set(pair, { ...(lags.get(pair) ?? { on: lagMs, off: lagMs }), [on ? 'on' : 'off']: lagMs });
    }
  }
  const rests = fans.map((): { fromMs: number; toMs: number }[] => []);
  for (const [pair, { on, off }] of lags) {
    const [f, g] = pair.split(' ').map(Number);
    for (const [own, other, lagMs] of [
      [f, g, { on, off }],
      [g, f, { on: -on, off: -off }],
    ] as const) {
      for (const unseen of unseenRuns(fans[own], fans[other], lagMs)) {
        moved[own][unseen.k] = unseen.fromMs;
        moved[own][unseen.k + 1] = unseen.toMs;
        if (!unseen.on) rests[other].push(unseen);
      }
    }
  }
  return fans.map((spans, fan) =>
    withRests(
      withStarts(spans, moved[fan]),
      rests[fan].sort((a, b) => a.fromMs - b.fromMs),
    ),
  );
}

/** When a cluster's first fan was switched: the middle of what the samples leave, weighed with where meters put it. */
function commonOf(cluster: readonly Member[]): number {
  const sampled = cluster.filter(({ edge }) => edge.sampled);
  const fromMs = Math.max(...sampled.map(({ edge, lagMs }) => edge.fromMs - lagMs));
  const toMs = Math.min(...sampled.map(({ edge, lagMs }) => edge.toMs - lagMs));
  let sum = 0;
  let weights = 0;
  const add = (ms: number, variance: number) => {
    const weight = 1 / Math.max(variance, 1);
    sum += weight * ms;
    weights += weight;
  };
  // Uniform over a window of width w: w^2 / 12; a meter's step to either side, triangular: w^2 / 24.
  if (sampled.length > 0) add((fromMs + toMs) / 2, (toMs - fromMs) ** 2 / 12);
  for (const { edge, lagMs } of cluster) {
    if (!edge.sampled) add(middleOf(edge) - lagMs, widthOf(edge) ** 2 / 24);
  }
  return sum / weights;
}

/** The spans with their starts moved; cuts within a run or rest stay where they are, between their neighbours. */
function withStarts(spans: FanSpans, startMs: Float64Array): FanSpans {
  const count = startMs.length;
  const starts = startMs.slice();
  for (let k = 1; k < count; k++) starts[k] = Math.max(starts[k], starts[k - 1]);
  const last = spans.endMs[count - 1];
  for (let k = 0; k < count; k++) starts[k] = Math.min(starts[k], last);
  return {
    ...spans,
    startMs: starts,
    endMs: Float64Array.from(starts, (_, k) => (k + 1 < count ? starts[k + 1] : last)),
  };
}
