import type { Bin } from '../../season/season.ts';
import { cumulativeFanHours, unknownHoursBetween } from '../fan/spans.ts';
import { fanPieces } from '../fronts/fan-pieces.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import type { FanSpans, Span } from '../types.ts';

/** Longest window, fan hours: long enough for a slow front to pass some sensors, short enough for weather to be told apart. */
const LONGEST_H = 120;
/**
 * Half of a window is the longest delay that can be found in it. 12 h is what a change takes for a metre at 0.2 cfm/bu (15 / 0.2 h
 * for 6 m, rule of thumb): in a shorter window only faster airflows than that of aeration can fit, and so wrong ones do.
 */
const SHORTEST_H = 24;
/** A hole in the fan's log longer than this, h, leaves the fan hours across it unknown. */
const UNKNOWN_H = 3;

/** A stretch of running in which fan hours count on without a break. */
export interface RunWindow {
  span: Span;
  /** fan hours since the fan's log began */
  fromH: number;
  toH: number;
  /** when the running began that the window is a part of, fan hours */
  runFromH: number;
  /** levelled depth, m */
  depthM: number;
}

/**
 * The running of a bin's fans cut into windows: at rests of three days or more, at holes of the log, where the depth of the
 * grain changes, and into equal parts of 120 fan hours at the most.
 */
export function runWindows(bin: Bin, spans: FanSpans): RunWindow[] {
  const fromMs = bin.grain.filledMs ?? Number.NEGATIVE_INFINITY;
  const toMs = bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY;
  const pieces = fanPieces(spans, Math.min(fromMs, firstDepthMs(bin)), toMs);
  const groups: { first: number; last: number; hours: number; depthM: number }[] = [];
  for (let i = 0; i < pieces.midMs.length; i++) {
    const depthM = grainDepthAt(bin, pieces.midMs[i]) ?? 0;
    const open = groups.at(-1);
    const goesOn =
      open !== undefined &&
      pieces.run[i] === pieces.run[i - 1] &&
      depthM === open.depthM &&
      unknownHoursBetween(spans, pieces.toMs[i - 1], pieces.fromMs[i]) <= UNKNOWN_H;
    if (goesOn) {
      open.last = i;
      open.hours += pieces.hours[i];
    } else groups.push({ first: i, last: i, hours: pieces.hours[i], depthM });
  }
  return groups
    .filter((one) => one.depthM > 0 && one.hours >= SHORTEST_H)
    .flatMap(({ first, last, hours, depthM }) => {
      const parts = Math.ceil(hours / LONGEST_H);
      const cuts = [first];
      let sum = 0;
      for (let i = first; i <= last; i++) {
        if (cuts.length < parts && sum >= (hours * cuts.length) / parts) cuts.push(i);
        sum += pieces.hours[i];
      }
      return cuts.map((from, part) => {
        const to = part + 1 < cuts.length ? cuts[part + 1] - 1 : last;
        const span = { fromMs: pieces.fromMs[from], toMs: pieces.toMs[to] };
        const ends = Float64Array.of(span.fromMs, span.toMs, pieces.fromMs[first]);
        const [fromH, toH, runFromH] = cumulativeFanHours(spans, ends);
        return { span, fromH, toH, runFromH, depthM };
      });
    });
}

function firstDepthMs(bin: Bin): number {
  const dated = bin.grain.depthSteps.filter((step) => step.depthM > 0 && Number.isFinite(step.fromMs));
  return dated.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...dated.map((step) => step.fromMs));
}
