import type { FanSpans, Span } from '../types.ts';

/**
 * Spans cut at the edges of some stretches, so that each lies within one or beside all of them: hours that were spread over a stretch
 * may have joined with a run that ends, or begins, at its edge.
 *
 * @param stretches  ms UTC, in any order
 * @returns          the same time and power, in the order of `spans`
 */
export function cutAtStretches(spans: FanSpans, stretches: readonly Span[]): FanSpans {
  if (stretches.length === 0) return spans;
  const edges = Float64Array.from(new Set(stretches.flatMap(({ fromMs, toMs }) => [fromMs, toMs]))).sort();
  const pieces: { fromMs: number; toMs: number; of: number }[] = [];
  let next = 0;
  for (let k = 0; k < spans.state.length; k++) {
    let fromMs = spans.startMs[k];
    while (next < edges.length && edges[next] <= fromMs) next++;
    for (; next < edges.length && edges[next] < spans.endMs[k]; next++) {
      pieces.push({ fromMs, toMs: edges[next], of: k });
      fromMs = edges[next];
    }
    pieces.push({ fromMs, toMs: spans.endMs[k], of: k });
  }
  return {
    startMs: Float64Array.from(pieces, (one) => one.fromMs),
    endMs: Float64Array.from(pieces, (one) => one.toMs),
    state: Uint8Array.from(pieces, (one) => spans.state[one.of]),
    powerW: Float64Array.from(pieces, (one) => spans.powerW[one.of]),
  };
}
