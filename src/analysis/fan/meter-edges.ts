import { FAN_ON, FAN_UNKNOWN, type FanSpans } from '../types.ts';
import type { MeterIntervals } from './meter.ts';
import { isCoarse, LONG_MS } from './running-rate.ts';
import { pushSpan, spanList, toFanSpans } from './spans.ts';

/**
 * Place starts and stops within their sampling interval by a fine meter that was read with the same samples: the part
 * of the interval that its advance explains at the run's own pace. Samples alone leave each edge unsure by an interval.
 *
 * @param spans      runs of a sampled log: a start lies on the first sample that says on, a stop on the first that says off
 * @param perSecond  the meter's usual advance a second while running
 */
export function placeEdges(spans: FanSpans, meter: MeterIntervals, perSecond: number): FanSpans {
  if (!(perSecond > 0) || isCoarse(meter, perSecond)) return spans;
  const { startMs, endMs, advance } = meter;
  const endingAt = new Map<number, number>();
  for (let i = 0; i < endMs.length; i++) if (endMs[i] - startMs[i] <= LONG_MS) endingAt.set(endMs[i], i);
  const pace = (i: number | undefined) => {
    const own = i === undefined ? Number.NaN : (advance[i] / (endMs[i] - startMs[i])) * 1000;
    return own >= 0.5 * perSecond && own <= 2 * perSecond ? own : perSecond;
  };
  /** running time within interval i at a pace, ms */
  const onMs = (i: number, at: number) => Math.min(endMs[i] - startMs[i], (advance[i] / at) * 1000);
  const list = spanList();
  const count = spans.state.length;
  let moved = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < count; k++) {
    const from = Math.max(moved, spans.startMs[k]);
    let to = spans.endMs[k];
    const next = k + 1 < count ? spans.state[k + 1] : FAN_UNKNOWN;
    const i = endingAt.get(to);
    const changes = spans.state[k] !== FAN_UNKNOWN && next !== FAN_UNKNOWN && spans.state[k] !== next;
    if (changes && i !== undefined && !Number.isNaN(advance[i])) {
      to = spans.state[k] === FAN_ON ? startMs[i] + onMs(i, pace(i - 1)) : endMs[i] - onMs(i, pace(i + 1));
      to = Math.max(from, Math.min(spans.endMs[k], to));
    }
    pushSpan(list, from, to, spans.state[k], spans.powerW[k]);
    moved = to;
  }
  return toFanSpans(list);
}
