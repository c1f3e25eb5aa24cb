import { onThroughout } from '../analysis/fan/spans.ts';
import { FAN_ON, FAN_UNKNOWN, type FanSpans, type Span } from '../analysis/types.ts';
import { type Estimate, estimate } from '../base/estimate.ts';
import { toLocalMs, type Zone } from '../base/zone.ts';
import type { FanDay, LocalSpan } from '../report/figures/time-axis.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

export function localSpan(span: Span, zone: Zone): LocalSpan {
  return { fromMs: toLocalMs(zone, span.fromMs), toMs: toLocalMs(zone, span.toMs) };
}

/** From the first to the last that is known of a fan, local. @param spans  not empty */
export function knownSpan({ startMs, endMs }: FanSpans, zone: Zone): LocalSpan {
  return localSpan({ fromMs: startMs[0], toMs: endMs[endMs.length - 1] }, zone);
}

/** The stretches in a state, in local time; neighbours are joined. */
export function stretches(spans: FanSpans, state: number, zone: Zone): LocalSpan[] {
  const out: LocalSpan[] = [];
  for (let i = 0; i < spans.state.length; i++) {
    if (spans.state[i] !== state) continue;
    const span = localSpan({ fromMs: spans.startMs[i], toMs: spans.endMs[i] }, zone);
    const last = out.at(-1);
    if (last !== undefined && last.toMs === span.fromMs) last.toMs = span.toMs;
    // In autumn's repeated hour the clock goes back: a stretch of no or negative length has nothing to draw.
    else if (span.toMs > span.fromMs) out.push(span);
  }
  return out;
}

/** Hours on and not known by local day, rising; days without any are left out. */
export function fanDays(spans: FanSpans, zone: Zone): FanDay[] {
  const days = new Map<number, FanDay>();
  const add = (of: readonly LocalSpan[], key: 'hours' | 'unknownHours') => {
    for (const span of of) {
      for (let day = Math.floor(span.fromMs / DAY_MS) * DAY_MS; day < span.toMs; day += DAY_MS) {
        const hours = (Math.min(span.toMs, day + DAY_MS) - Math.max(span.fromMs, day)) / HOUR_MS;
        const found = days.get(day) ?? { dayMs: day, hours: 0, unknownHours: 0 };
        found[key] += hours;
        days.set(day, found);
      }
    }
  };
  add(stretches(spans, FAN_ON, zone), 'hours');
  add(stretches(spans, FAN_UNKNOWN, zone), 'unknownHours');
  return [...days.values()].sort((a, b) => a.dayMs - b.dayMs);
}

/**
 * Share of the hours on between 22:00 and 6:00 by the local clock.
 *
 * @param untimed  stretches whose hours may have lain anywhere in them
 */
export function nightShare(spans: FanSpans, zone: Zone, untimed: readonly Span[] = []): Estimate | null {
  const ran = nightOf(spans, FAN_ON, zone);
  if (ran.all === 0) return null;
  // By a log that is silent the fan may have run by night alone, or by day alone.
  const silent = nightOf(spans, FAN_UNKNOWN, zone);
  const moved = { less: 0, more: 0 };
  for (const stretch of untimed) {
    const own = nightOf(within(spans, stretch), FAN_ON, zone);
    const clock = nightOf(onThroughout(stretch), FAN_ON, zone);
    moved.less += own.night - Math.max(0, own.all - (clock.all - clock.night));
    moved.more += Math.min(own.all, clock.night) - own.night;
  }
  const least = Math.max(0, ran.night - moved.less) / (ran.all + silent.all - silent.night);
  const most = Math.min(ran.all, ran.night + moved.more) + silent.night;
  return estimate(ran.night / ran.all, least, most / (ran.all + silent.night));
}

function within(spans: FanSpans, { fromMs, toMs }: Span): FanSpans {
  const startMs = spans.startMs.map((ms) => Math.min(toMs, Math.max(fromMs, ms)));
  return { ...spans, startMs, endMs: spans.endMs.map((ms) => Math.min(toMs, Math.max(fromMs, ms))) };
}

/** Time in a state, and what of it fell between 22:00 and 6:00, ms. */
function nightOf(spans: FanSpans, state: number, zone: Zone): { all: number; night: number } {
  let all = 0;
  let night = 0;
  for (const span of stretches(spans, state, zone)) {
    all += span.toMs - span.fromMs;
    for (let day = Math.floor(span.fromMs / DAY_MS) * DAY_MS - DAY_MS; day < span.toMs; day += DAY_MS) {
      const from = Math.max(span.fromMs, day + 22 * HOUR_MS);
      const to = Math.min(span.toMs, day + 30 * HOUR_MS);
      if (to > from) night += to - from;
    }
  }
  return { all, night };
}
