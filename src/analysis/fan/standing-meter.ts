import type { FanSpans } from '../types.ts';
import type { MeterIntervals } from './meter.ts';
import { fanHoursBetween, unknownHoursBetween } from './spans.ts';

/**
 * A meter that stands while another log says that the fan runs tells nothing: those stretches become not known. They are
 * stretches without any advance in which the fan ran an hour or more and would have made five steps of the meter.
 */
export function withoutStanding(meter: MeterIntervals, spans: FanSpans, perSecond: number): MeterIntervals {
  const { startMs, endMs } = meter;
  const advance = meter.advance.slice();
  const least = Math.max(1, (5 * meter.resolution) / perSecond / 3600);
  let hours = 0;
  for (let from = 0; from < advance.length; from++) {
    if (meter.advance[from] !== 0) continue;
    let to = from;
    while (to + 1 < advance.length && meter.advance[to + 1] === 0) to += 1;
    const ran = fanHoursBetween(spans, startMs[from], endMs[to]);
    if (ran >= least) {
      advance.fill(Number.NaN, from, to + 1);
      hours += ran;
    }
    from = to;
  }
  if (hours === 0) return meter;
  const note = `The meter stood still through ${Number(hours.toFixed(1))} h in which the fan ran by its other log; it is left out there.`;
  return { ...meter, advance, notes: [...meter.notes, note] };
}

/**
 * What the meter advances a second while the fan runs by another log, over the intervals in which that log knows all.
 * For meters read too rarely to show their pace. NaN where there is less than ten running hours to go by.
 */
export function paceByRuns(meter: MeterIntervals, spans: FanSpans): number {
  let advance = 0;
  let hours = 0;
  for (let i = 0; i < meter.advance.length; i++) {
    const { startMs, endMs } = meter;
    if (Number.isNaN(meter.advance[i]) || !isKnown(spans, startMs[i], endMs[i])) continue;
    advance += meter.advance[i];
    hours += fanHoursBetween(spans, startMs[i], endMs[i]);
  }
  return hours >= 10 ? advance / hours / 3600 : Number.NaN;
}

function isKnown(spans: FanSpans, fromMs: number, toMs: number): boolean {
  const count = spans.state.length;
  // Samples and readings of two loggers begin some minutes apart.
  const slop = 0.02 * (toMs - fromMs);
  if (count === 0 || spans.startMs[0] > fromMs + slop || spans.endMs[count - 1] < toMs - slop) return false;
  return unknownHoursBetween(spans, fromMs, toMs) === 0;
}
