import { FAN_ON, type FanSpans } from '../types.ts';
import { LONG_MS, type MeterIntervals } from './meter.ts';
import { pushSpan, spanList, toFanSpans } from './spans.ts';
import { middle } from './usual-interval.ts';

const MOST_STEP_SHARE = 0.02;
const MOST_EDGE_SHARE = 0.03;
const IDLE_SHARE = 0.08;
// Other power than this in less than an hour of running is a start or stop put in the wrong place, not a motor.
const LIKELY_FACTOR = 1.15;
const HOUR_MS = 3_600_000;

interface Chunk {
  fromMs: number;
  toMs: number;
  factor: number;
}

/**
 * Scale the power of the runs so that their energy is the meter's.
 *
 * The meter's time is cut into chunks, each long enough that its step (under 2 %) and the unsure starts and stops (under
 * 3 % of the running time) do not show as power that the motor never drew; within a chunk the power keeps the shape it came with.
 *
 * @param spans    power W while on, not NaN
 * @param edgesMs  how unsure a start or stop is, standard error, ms; 0 where the meter itself placed them
 * @param perSecond  the meter's advance a second while the fan runs, W
 * @returns        the spans and the share of their energy that the meter gave
 */
export function meteredPower(
  spans: FanSpans,
  meter: MeterIntervals,
  edgesMs: number,
  perSecond: number,
): { spans: FanSpans; share: number } {
  const { chunks, idleFactor } = chunksOf(spans, meter, edgesMs, perSecond);
  const list = spanList();
  let metered = 0;
  let all = 0;
  let c = 0;
  for (let k = 0; k < spans.state.length; k++) {
    if (spans.state[k] !== FAN_ON) {
      pushSpan(list, spans.startMs[k], spans.endMs[k], spans.state[k], spans.powerW[k]);
      continue;
    }
    let at = spans.startMs[k];
    while (at < spans.endMs[k]) {
      while (c < chunks.length && chunks[c].toMs <= at) c += 1;
      const inside = c < chunks.length && chunks[c].fromMs <= at;
      const end = Math.min(spans.endMs[k], inside ? chunks[c].toMs : (chunks[c]?.fromMs ?? Number.POSITIVE_INFINITY));
      const power = spans.powerW[k] * (inside ? chunks[c].factor * idleFactor : 1);
      if (inside) metered += power * (end - at);
      all += power * (end - at);
      pushSpan(list, at, end, FAN_ON, power);
      at = end;
    }
  }
  return { spans: toFanSpans(list), share: all > 0 ? metered / all : 0 };
}

function chunksOf(
  spans: FanSpans,
  meter: MeterIntervals,
  edgesMs: number,
  perSecond: number,
): { chunks: Chunk[]; idleFactor: number } {
  const { startMs, endMs, advance, reset, resolution } = meter;
  const chunks: Chunk[] = [];
  const usualPower = middle(spans.powerW.filter((_, k) => spans.state[k] === FAN_ON));
  let k = 0;
  let fromMs = Number.NaN;
  let energy = 0;
  let base = 0;
  let onMs = 0;
  let edges = 0;
  let before = -1;
  let idle = 0;
  let total = 0;
  const close = (toMs: number, good: boolean) => {
    const last = chunks[chunks.length - 1];
    const factor = (energy * 1000) / base;
    // A meter that stands through a long run, or tells many times what the fan uses, says nothing of this fan.
    const believable = base > 0 && (factor > 0.25 || onMs * usualPower < 10_000 * resolution) && factor < 4;
    if (good && believable) chunks.push({ fromMs, toMs, factor });
    else if (base > 0 && energy > 0 && last !== undefined && last.toMs === fromMs) {
      const lastBase = baseOf(last.fromMs, last.toMs);
      last.factor = (last.factor * lastBase + energy * 1000) / (lastBase + base);
      last.toMs = toMs;
    } else if (believable && energy > 5 * resolution) chunks.push({ fromMs, toMs, factor });
    fromMs = Number.NaN;
    energy = base = onMs = edges = 0;
  };
  const baseOf = (from: number, to: number) => {
    let sum = 0;
    for (let i = 0; i < spans.state.length; i++) {
      if (spans.state[i] !== FAN_ON || spans.endMs[i] <= from || spans.startMs[i] >= to) continue;
      sum += spans.powerW[i] * (Math.min(spans.endMs[i], to) - Math.max(spans.startMs[i], from));
    }
    return sum;
  };
  for (let i = 0; i < advance.length; i++) {
    // What ran before a reset within a short interval the rest of the log tells better.
    if (Number.isNaN(advance[i]) || (reset[i] === 1 && endMs[i] - startMs[i] <= LONG_MS)) {
      if (!Number.isNaN(fromMs)) close(startMs[i], false);
      continue;
    }
    if (Number.isNaN(fromMs)) fromMs = startMs[i];
    const baseBefore = base;
    while (k > 0 && spans.startMs[k] > startMs[i]) k -= 1;
    while (k < spans.state.length && spans.endMs[k] <= startMs[i]) k += 1;
    for (let j = k; j < spans.state.length && spans.startMs[j] < endMs[i]; j++) {
      const length = Math.min(spans.endMs[j], endMs[i]) - Math.max(spans.startMs[j], startMs[i]);
      const on = spans.state[j] === FAN_ON;
      if (j !== before && (before < 0 || on !== (spans.state[before] === FAN_ON))) edges += 1;
      before = j;
      if (!on) continue;
      base += spans.powerW[j] * length;
      onMs += length;
    }
    // Lamps and controls use a little while the fan rests: kept apart, or the next run would seem to start with it.
    const rests = base === baseBefore && advance[i] < (IDLE_SHARE * perSecond * (endMs[i] - startMs[i])) / 1000;
    total += advance[i];
    if (rests) idle += advance[i];
    else energy += advance[i];
    const factor = (energy * 1000) / base;
    const usual = factor > 1 / LIKELY_FACTOR && factor < LIKELY_FACTOR;
    const sharp =
      (usual || onMs >= HOUR_MS) &&
      resolution <= MOST_STEP_SHARE * energy &&
      edgesMs * Math.sqrt(edges) <= MOST_EDGE_SHARE * onMs;
    if (base > 0 && sharp) close(endMs[i], true);
  }
  if (!Number.isNaN(fromMs)) close(endMs[endMs.length - 1], false);
  return { chunks, idleFactor: total > idle ? total / (total - idle) : 1 };
}
