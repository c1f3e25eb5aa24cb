import { FAN_OFF, FAN_ON, type FanSpans } from '../types.ts';
import { isEdge } from './edge-windows.ts';
import { agreement, firstNotBefore, sampleWithin } from './log-agreement.ts';
import { onAt } from './spans.ts';

/** One fan of two does in this part of the other's runs what the other does: what its log does not show it did not see. */
const NEARLY_ALWAYS = 0.9;

/** A run (or rest) that one log saw and the other, of a fan switched with it, did not: between which moments it lies. */
export interface Unseen {
  /** index of the span in the log that saw it */
  k: number;
  on: boolean;
  fromMs: number;
  toMs: number;
}

/**
 * Runs and rests of `own` that fell between two samples of `other`'s log, where `other` is nearly always switched with it.
 * The samples before and after, which say the opposite, leave less of the windows in which the run began and ended: of two
 * logs with one pace about half a step, so that the run counts with the mean of what both logs saw.
 *
 * @param lagMs  how much later `other` is switched on and off
 */
export function unseenRuns(own: FanSpans, other: FanSpans, lagMs: { on: number; off: number }): Unseen[] {
  const { startFromMs: from, startToMs: to } = own;
  const sampled = other.sampledMs;
  if (sampled === undefined || from === undefined || to === undefined) return [];
  const together = agreement(own, other);
  const unseen: Unseen[] = [];
  for (let k = 0; k + 1 < own.state.length; k++) {
    if (!isEdge(own, k) || !isEdge(own, k + 1)) continue;
    const on = own.state[k] === FAN_ON;
    if ((on ? together.runs : together.rests) < NEARLY_ALWAYS) continue;
    const begin = on ? lagMs.on : lagMs.off;
    const end = on ? lagMs.off : lagMs.on;
    // A sample within says that the other did not join in.
    if (sampleWithin(sampled, to[k] + begin, from[k + 1] + end) !== null) continue;
    const next = firstNotBefore(sampled, to[k] + begin);
    if (next === 0 || next >= sampled.length) continue;
    const opposite = on ? FAN_OFF : FAN_ON;
    if (onAt(other, sampled[next - 1]) !== opposite || onAt(other, sampled[next]) !== opposite) continue;
    const least = Math.max(from[k], sampled[next - 1] - begin);
    const most = Math.min(to[k + 1], sampled[next] - end);
    unseen.push({ k, on, fromMs: (least + to[k]) / 2, toMs: (from[k + 1] + most) / 2 });
  }
  return unseen;
}

/** Cut rests, rising and apart, out of the runs of a log that did not see them. */
export function withRests(spans: FanSpans, rests: readonly { fromMs: number; toMs: number }[]): FanSpans {
  if (rests.length === 0) return spans;
  const startMs: number[] = [];
  const state: number[] = [];
  const powerW: number[] = [];
  let r = 0;
  for (let k = 0; k < spans.state.length; k++) {
    const push = (ms: number, s: number, power: number) => {
      startMs.push(ms);
      state.push(s);
      powerW.push(power);
    };
    push(spans.startMs[k], spans.state[k], spans.powerW[k]);
    while (r < rests.length && rests[r].fromMs < spans.endMs[k]) {
      const { fromMs, toMs } = rests[r++];
      if (spans.state[k] !== FAN_ON || fromMs <= spans.startMs[k] || toMs >= spans.endMs[k]) continue;
      push(fromMs, FAN_OFF, 0);
      push(toMs, FAN_ON, spans.powerW[k]);
    }
  }
  const last = spans.endMs[spans.endMs.length - 1];
  return {
    startMs: Float64Array.from(startMs),
    endMs: Float64Array.from(startMs, (_, k) => (k + 1 < startMs.length ? startMs[k + 1] : last)),
    state: Uint8Array.from(state),
    powerW: Float64Array.from(powerW),
  };
}
