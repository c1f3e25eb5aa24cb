import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans, type Span } from '../types.ts';
import { localPace } from './local-pace.ts';
import { LONG_MS, type MeterIntervals } from './meter.ts';
import { isCoarse } from './running-rate.ts';
import { pushSpan, type SpanList, spanList, toFanSpans } from './spans.ts';

const HOUR_MS = 3_600_000;

export interface MeterRate {
  /** advance a second while running: W of an energy meter, 1 of a run-time meter */
  perSecond: number;
  /** share by which the pace may vary while the fan runs all the time */
  slack: number;
}

export interface MeterRuns {
  spans: FanSpans;
  /** stretches whose running hours are known but not when in them they were: spread evenly */
  spread: Span[];
}

/**
 * Runs out of a running meter. An interval that advances at the running pace is on, one that stands is off, one in
 * between is on for its part: the running part joins a neighbour that runs, else it comes first.
 *
 * A coarse meter (1 kWh, a tenth of an hour) stands and steps although the fan runs on: there the time between two
 * steps is judged as one, and it is a run as long as one step of the meter can explain what is lacking.
 *
 * Over a long interval (two hours) only the hours are known: spread over its clock hours, or left unknown.
 *
 * @param spreadLong  false: long intervals that ran in part are left unknown, for another log to say more
 * @returns           spans with power NaN while on: the power comes later
 */
export function meterRuns(meter: MeterIntervals, rate: MeterRate, spreadLong: boolean): MeterRuns {
  const out: Writer = { list: spanList(), spread: [], spreadLong, endedOn: false };
  if (isCoarse(meter, rate.perSecond)) coarseRuns(meter, rate, out);
  else fineRuns(meter, rate, out);
  return { spans: toFanSpans(out.list), spread: out.spread };
}

interface Writer {
  list: SpanList;
  spread: Span[];
  spreadLong: boolean;
  endedOn: boolean;
}

function write(out: Writer, fromMs: number, toMs: number, state: number): void {
  pushSpan(out.list, fromMs, toMs, state, state === FAN_OFF ? 0 : Number.NaN);
  if (toMs > fromMs) out.endedOn = state === FAN_ON;
}

/** `onMs` of [fromMs, toMs) at unknown moments. */
function writeLong(out: Writer, fromMs: number, toMs: number, onMs: number, slack: number): void {
  const length = toMs - fromMs;
  if (onMs >= (1 - Math.min(slack, 0.1)) * length) write(out, fromMs, toMs, FAN_ON);
  else if (onMs <= 0.01 * length) write(out, fromMs, toMs, FAN_OFF);
  else if (!out.spreadLong) write(out, fromMs, toMs, FAN_UNKNOWN);
  else {
    out.spread.push({ fromMs, toMs });
    spreadOver(fromMs, toMs, onMs, (from, to, state) => write(out, from, to, state));
  }
}

/** A long interval in which the meter began anew: what it has counted since is put at its end, though nobody knows when it ran; of the rest nothing tells. */
function writeReset(out: Writer, fromMs: number, toMs: number, onMs: number): void {
  const at = toMs - Math.min(onMs, toMs - fromMs);
  if (out.spreadLong && at > fromMs && at < toMs) out.spread.push({ fromMs, toMs });
  write(out, fromMs, at, FAN_UNKNOWN);
  write(out, at, toMs, FAN_ON);
}

/** Even slices of about an hour, each on for its share first. */
export function spreadOver(
  fromMs: number,
  toMs: number,
  onMs: number,
  write: (fromMs: number, toMs: number, state: number) => void,
): void {
  const slices = Math.max(1, Math.round((toMs - fromMs) / HOUR_MS));
  const slice = (toMs - fromMs) / slices;
  const on = Math.min(1, Math.max(0, onMs / (toMs - fromMs))) * slice;
  for (let k = 0; k < slices; k++) {
    const start = fromMs + k * slice;
    const end = k === slices - 1 ? toMs : start + slice;
    write(start, Math.min(end, start + on), FAN_ON);
    write(Math.min(end, start + on), end, FAN_OFF);
  }
}

function fineRuns(meter: MeterIntervals, rate: MeterRate, out: Writer): void {
  const { startMs, endMs, advance, resolution } = meter;
  const { share, full, pace } = localPace(meter, rate);
  const slackOf = (i: number) => rate.slack + resolution / ((pace[i] * (endMs[i] - startMs[i])) / 1000);
  for (let i = 0; i < advance.length; i++) {
    const length = endMs[i] - startMs[i];
    if (Number.isNaN(advance[i])) write(out, startMs[i], endMs[i], FAN_UNKNOWN);
    else if (length > LONG_MS && meter.reset[i] === 1) writeReset(out, startMs[i], endMs[i], share[i] * length);
    else if (length > LONG_MS) writeLong(out, startMs[i], endMs[i], share[i] * length, slackOf(i));
    else if (full[i] === 1) write(out, startMs[i], endMs[i], FAN_ON);
    else {
      // The pace of the run that this interval begins or ends, where a neighbour shows it.
      const beside = Math.max(full[i - 1] === 1 ? share[i - 1] : 0, full[i + 1] === 1 ? share[i + 1] : 0);
      const part = Math.min(1, share[i] / (beside > 1 && rate.slack > 0.03 ? beside : 1));
      // Lamps and controls use a little while the fan rests.
      const rests = share[i] < 0.01 || (share[i] < 0.08 && full[i - 1] !== 1 && full[i + 1] !== 1);
      const on = rests ? 0 : part * length;
      const last = !out.endedOn && (full[i + 1] === 1 || share[i + 1] >= 0.05);
      if (last) {
        write(out, startMs[i], endMs[i] - on, FAN_OFF);
        write(out, endMs[i] - on, endMs[i], FAN_ON);
      } else {
        write(out, startMs[i], startMs[i] + on, FAN_ON);
        write(out, startMs[i] + on, endMs[i], FAN_OFF);
      }
    }
  }
}

function coarseRuns(meter: MeterIntervals, rate: MeterRate, out: Writer): void {
  const { startMs, endMs, advance, resolution } = meter;
  const stepMs = (resolution / rate.perSecond) * 1000;
  let from = 0;
  // The last interval of a run is held back and gets what is left, for the rounding that makes up within a run would there count
  // as running: of a run-time meter, whose pace is known exactly, what the whole run leaves; else what that interval itself counted.
  const exact = rate.slack <= 0.03;
  let held: Span | null = null;
  /** what the meter counted, of the run under way or of the interval held, less what of it is written or held, ms */
  let owedMs = 0;
  for (let i = 0; i < advance.length; i++) {
    if (Number.isNaN(advance[i])) {
      release();
      tail(startMs[from], startMs[i]);
      write(out, startMs[i], endMs[i], FAN_UNKNOWN);
      from = i + 1;
    } else if (advance[i] > 0 || (meter.reset[i] === 1 && endMs[i] - startMs[i] > LONG_MS)) {
      between(from, i);
      from = i + 1;
    }
  }
  release();
  if (from < advance.length) tail(startMs[from], endMs[endMs.length - 1]);

  /** The end of a run whose last interval was held back. */
  function release(): void {
    if (held === null) return;
    const length = held.toMs - held.fromMs;
    const on = Math.min(length, Math.max(0, length + owedMs));
    write(out, held.fromMs, held.fromMs + on, FAN_ON);
    write(out, held.fromMs + on, held.toMs, FAN_OFF);
    held = null;
    owedMs = 0;
  }

  /** No more steps: what a run has left is half a step on average. */
  function tail(fromMs: number, toMs: number): void {
    const on = out.endedOn ? Math.min(stepMs / 2, toMs - fromMs) : 0;
    write(out, fromMs, fromMs + on, FAN_ON);
    write(out, fromMs + on, toMs, FAN_OFF);
  }

  function between(first: number, last: number): void {
    const fromMs = startMs[first];
    const toMs = endMs[last];
    const onMs = Math.min(toMs - fromMs, (advance[last] / rate.perSecond) * 1000);
    const sampleMs = endMs[last] - startMs[last];
    if (sampleMs > LONG_MS && (advance[last] > 3 * resolution || meter.reset[last] === 1)) {
      release();
      tail(fromMs, startMs[last]);
      if (meter.reset[last] === 1) {
        writeReset(out, startMs[last], toMs, Math.min(onMs, sampleMs));
        return;
      }
      writeLong(out, startMs[last], toMs, Math.min(onMs, sampleMs), rate.slack + stepMs / sampleMs);
      return;
    }
    const lacking = toMs - fromMs - onMs;
    if (lacking < Math.min(stepMs, sampleMs) + rate.slack * (toMs - fromMs)) {
      if (held !== null) write(out, held.fromMs, held.toMs, FAN_ON);
      held = { fromMs, toMs };
      if (exact) owedMs += (advance[last] / rate.perSecond) * 1000 - (toMs - fromMs);
      // Between steps further apart than the samples nothing tells where in them the run ended.
      else owedMs = first === last ? onMs - (toMs - fromMs) : 0;
      return;
    }
    if (first === last && held !== null) {
      // The run ended within this interval.
      held.toMs = toMs;
      owedMs = (exact ? owedMs : 0) + onMs - (toMs - fromMs);
      release();
      return;
    }
    release();
    // In the very next sample it is the end of that run. Later, the run before left on average half a step unshown and
    // the rest belongs to the run that made the step.
    const left = !out.endedOn ? 0 : first === last ? onMs : Math.min(stepMs / 2, onMs / 2);
    write(out, fromMs, fromMs + left, FAN_ON);
    write(out, fromMs + left, toMs - (onMs - left), FAN_OFF);
    write(out, toMs - (onMs - left), toMs, FAN_ON);
  }
}
