import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans } from '../types.ts';
import { localPace } from './local-pace.ts';
import { LONG_MS, type MeterIntervals } from './meter.ts';
import type { MeterRate } from './meter-runs.ts';
import { overlay } from './overlay.ts';
import { isCoarse } from './running-rate.ts';
import { onAt, pushSpan, spanIndexAt, spanList, toFanSpans } from './spans.ts';

// Less than this share of an interval is lamps, controls and the meter's step, not a run or rest between two samples.
const LEAST_SHARE = 0.05;

export interface PlacedEdges {
  spans: FanSpans;
  /** ms UTC of the sampled log's edges that the meter has judged: one that it left where it was is as sure as one that it moved */
  judgedMs: ReadonlySet<number>;
}

/**
 * Place starts and stops within their sampling interval by a fine meter that was read with the same samples: the part of
 * the interval that its advance explains at the running pace of the place. Samples alone leave each edge unsure by an
 * interval, and do not see a run or rest between two of them.
 *
 * @param spans  runs of a sampled log: a start lies on the first sample that says on, a stop on the first that says off
 * @returns      null where the meter placed nothing
 */
export function placeEdges(spans: FanSpans, meter: MeterIntervals, rate: MeterRate): PlacedEdges | null {
  if (!(rate.perSecond > 0) || isCoarse(meter, rate.perSecond)) return null;
  const { startMs, endMs, advance } = meter;
  const { share, full } = localPace(meter, rate);
  const list = spanList();
  const judgedMs = new Set<number>();
  const write = (fromMs: number, toMs: number, state: number, powerW: number) => {
    const after = list.endMs[list.endMs.length - 1];
    if (after !== undefined && fromMs > after) pushSpan(list, after, fromMs, FAN_UNKNOWN, Number.NaN);
    pushSpan(list, fromMs, toMs, state, state === FAN_OFF ? 0 : powerW);
  };
  for (let i = 0; i < advance.length; i++) {
    if (Number.isNaN(share[i]) || meter.reset[i] === 1 || endMs[i] - startMs[i] > LONG_MS) continue;
    const at = spanIndexAt(spans, startMs[i]);
    // Only where the sampled log was read at the same two moments, with nothing in between.
    if (at < 0 || at >= spans.state.length || spans.endMs[at] < endMs[i]) continue;
    const from = spans.state[at];
    const to = onAt(spans, endMs[i]);
    if (from === FAN_UNKNOWN || to === FAN_UNKNOWN) continue;
    // Running through, or from or into such, although both samples say off is no edge but a contradiction: for the caller to judge and tell.
    if (from === FAN_OFF && to === FAN_OFF && (full[i] === 1 || full[i - 1] === 1 || full[i + 1] === 1)) continue;
    if (from !== to) judgedMs.add(endMs[i]);
    const length = endMs[i] - startMs[i];
    const part = full[i] === 1 ? 1 : share[i] < LEAST_SHARE ? 0 : share[i];
    const onMs = Math.min(1, from !== to ? share[i] : part) * length;
    const powerW = from === FAN_ON ? spans.powerW[at] : to === FAN_ON ? spans.powerW[at + 1] : Number.NaN;
    // The running part joins the samples that say on; between two alike it lies, or lacks, in the middle.
    const first = from === FAN_ON ? (to === FAN_ON ? onMs / 2 : onMs) : to === FAN_ON ? 0 : Number.NaN;
    if (Number.isNaN(first)) {
      write(startMs[i], startMs[i] + (length - onMs) / 2, FAN_OFF, 0);
      write(startMs[i] + (length - onMs) / 2, endMs[i] - (length - onMs) / 2, FAN_ON, powerW);
      write(endMs[i] - (length - onMs) / 2, endMs[i], FAN_OFF, 0);
    } else {
      const last = onMs - first;
      write(startMs[i], startMs[i] + first, FAN_ON, powerW);
      write(startMs[i] + first, endMs[i] - last, FAN_OFF, 0);
      write(endMs[i] - last, endMs[i], FAN_ON, powerW);
    }
  }
  return list.state.length === 0 ? null : { spans: overlay(toFanSpans(list), spans), judgedMs };
}
