import { fanHoursBetween } from '../fan/spans.ts';
import { untimedStretches } from '../fan/untimed-stretches.ts';
import type { FanSeason, FanSpans, Span } from '../types.ts';

/**
 * How far the clock hours of several fans together may be off where a meter tells how many hours one of them ran, but not when: they may
 * have run at once, or one after the other.
 *
 * @param spans  of the fans together, as hours of unknown moment were laid
 * @returns      h, none below zero
 */
export function overlapDoubt(
  spans: FanSpans,
  fans: readonly Pick<FanSeason, 'spans' | 'spread'>[],
): { less: number; more: number } {
  const doubt = { less: 0, more: 0 };
  if (fans.length < 2) return doubt;
  for (const { fromMs, toMs } of merged(untimedStretches(fans))) {
    const each = fans.map((fan) => fanHoursBetween(fan.spans, fromMs, toMs));
    const laid = fanHoursBetween(spans, fromMs, toMs);
    const inTurn = each.reduce((sum, hours) => sum + hours, 0);
    doubt.less += Math.max(0, laid - Math.max(...each));
    doubt.more += Math.max(0, Math.min((toMs - fromMs) / 3_600_000, inTurn) - laid);
  }
  return doubt;
}

/** Stretches that lie over each other as one. */
function merged(stretches: readonly Span[]): Span[] {
  const out: Span[] = [];
  for (const { fromMs, toMs } of [...stretches].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = out[out.length - 1];
    if (last !== undefined && fromMs < last.toMs) out[out.length - 1] = { ...last, toMs: Math.max(last.toMs, toMs) };
    else out.push({ fromMs, toMs });
  }
  return out;
}
