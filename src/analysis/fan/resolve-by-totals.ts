import { FAN_ON, FAN_UNKNOWN, type FanSpans, type Span } from '../types.ts';
import { LONG_MS, type MeterIntervals } from './meter.ts';
import { spreadOver } from './meter-runs.ts';
import { overlay } from './overlay.ts';
import { pushSpan, spanIndexAt, spanList, toFanSpans } from './spans.ts';

// How well a usual pace tells the hours of known runs; what is left for the unknown time must stand out above it.
const PACE_ERROR = 0.02;

/**
 * Resolve unknown time by what a meter advanced over a long interval: its running hours less those already known,
 * spread evenly over the unknown part. Left unknown where the known hours are so many that their error drowns the rest.
 *
 * @param perSecond  the meter's advance a second while running
 * @param spread     receives the stretches filled so
 */
export function resolveByTotals(spans: FanSpans, meter: MeterIntervals, perSecond: number, spread: Span[]): FanSpans {
  const list = spanList();
  for (let i = 0; i < meter.advance.length; i++) {
    const from = meter.startMs[i];
    const to = meter.endMs[i];
    if (to - from <= LONG_MS || Number.isNaN(meter.advance[i])) continue;
    const unknown: Span[] = [];
    let known = 0;
    let unknownMs = 0;
    for (let k = Math.max(0, spanIndexAt(spans, from)); k < spans.state.length && spans.startMs[k] < to; k++) {
      const start = Math.max(from, spans.startMs[k]);
      const end = Math.min(to, spans.endMs[k]);
      if (spans.state[k] === FAN_ON) known += end - start;
      if (spans.state[k] === FAN_UNKNOWN && end > start) {
        unknown.push({ fromMs: start, toMs: end });
        unknownMs += end - start;
      }
    }
    if (unknownMs === 0 || PACE_ERROR * known > 0.1 * unknownMs) continue;
    const leftMs = Math.min(unknownMs, Math.max(0, (meter.advance[i] / perSecond) * 1000 - known));
    for (const { fromMs, toMs } of unknown) {
      const on = (leftMs * (toMs - fromMs)) / unknownMs;
      const share = on / (toMs - fromMs);
      const whole = share > 0.95 ? toMs - fromMs : share < 0.01 ? 0 : on;
      if (whole > 0 && whole < toMs - fromMs) spread.push({ fromMs, toMs });
      spreadOver(fromMs, toMs, whole, (start, end, state) =>
        pushSpan(list, start, end, state, state === FAN_ON ? Number.NaN : 0),
      );
    }
  }
  return overlay(spans, toFanSpans(list));
}
