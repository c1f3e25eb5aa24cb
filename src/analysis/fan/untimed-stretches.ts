import { FAN_ON, FAN_UNKNOWN, type FanSeason, type FanSpans, type Span } from '../types.ts';
import { cutAtStretches } from './cut-at-stretches.ts';

/** Stretches of which a meter, read once a day or more seldom, tells how many hours some fans ran, but not when; ms UTC. */
export function untimedStretches(fans: readonly Pick<FanSeason, 'spread'>[]): Span[] {
  return fans.flatMap(({ spread }) => spread ?? []);
}

/** Whether one of some stretches has a part between two moments, ms UTC. */
export function reachInto(stretches: readonly Span[], fromMs: number, toMs: number): boolean {
  return stretches.some((one) => one.toMs > fromMs && one.fromMs < toMs);
}

/** Spans without the runs that were laid into some stretches: not known there, and without power. */
export function withoutMoments(logged: FanSpans, untimed: readonly Span[]): FanSpans {
  if (untimed.length === 0) return logged;
  const spans = cutAtStretches(logged, untimed);
  const isLaid = spans.state.map((_, i) =>
    Number(untimed.some(({ fromMs, toMs }) => spans.startMs[i] >= fromMs && spans.endMs[i] <= toMs)),
  );
  return {
    ...spans,
    state: spans.state.map((own, i) => (own === FAN_ON && isLaid[i] === 1 ? FAN_UNKNOWN : own)),
    powerW: spans.powerW.map((own, i) => (isLaid[i] === 1 ? 0 : own)),
  };
}
