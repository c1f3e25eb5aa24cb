import { onAt } from '../fan/spans.ts';
import type { FanSeason, FanSpans } from '../types.ts';
import { FAN_ON } from '../types.ts';

/** Which of a bin's fans run at a moment, as a key: `F1`, `F1+F2`; empty where none does. */
export function fanSetAt(fans: readonly FanSeason[], ms: number): string {
  return fans
    .filter((fan) => onAt(fan.spans, ms) === FAN_ON)
    .map((fan) => fan.fanId)
    .join('+');
}

/** The set that ran for most of the time between two moments, and its share of the fan hours there. */
export function mainFanSet(
  fans: readonly FanSeason[],
  spans: FanSpans,
  fromMs: number,
  toMs: number,
): { set: string; share: number } {
  const hours = new Map<string, number>();
  let all = 0;
  const cuts = cutsOf(fans, spans, fromMs, toMs);
  for (let i = 0; i + 1 < cuts.length; i++) {
    const middle = (cuts[i] + cuts[i + 1]) / 2;
    const set = fanSetAt(fans, middle);
    if (set === '') continue;
    const length = cuts[i + 1] - cuts[i];
    hours.set(set, (hours.get(set) ?? 0) + length);
    all += length;
  }
  let set = '';
  let most = 0;
  for (const [key, length] of hours) if (length > most) [set, most] = [key, length];
  return { set, share: all > 0 ? most / all : 0 };
}

function cutsOf(fans: readonly FanSeason[], spans: FanSpans, fromMs: number, toMs: number): number[] {
  const cuts = new Set([fromMs, toMs]);
  for (const { startMs, endMs, state } of [spans, ...fans.map((fan) => fan.spans)]) {
    for (let i = 0; i < state.length; i++) {
      for (const ms of [startMs[i], endMs[i]]) if (ms > fromMs && ms < toMs) cuts.add(ms);
    }
  }
  return [...cuts].sort((a, b) => a - b);
}
