import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import { FAN_OFF, type FanSpans, type Span } from '../types.ts';
import type { MomentLimits } from './sensor-moments.ts';
import { AIR_STILL, type SensorReadings } from './sensor-readings.ts';

const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;

export type MomentName = 'start' | 'end';

/** The day whose readings stand for the start or the end. */
export interface MomentWindow {
  span: Span;
  /** only still-air readings of it count */
  stillAir: boolean;
  /** hours that the fan ran, or by its usual share of time probably ran, between the moment and the day */
  missedFanHours: number;
  /** time between the moment and the day, ms */
  slidMs: number;
}

/**
 * The first or last 24 hours of still-air readings, or else of all readings, near one end of [fromMs, toMs).
 *
 * The day opens (closes) once half of the sensors are being read, so that no single sensor with a longer or shorter log sets it.
 * Still air is preferred only where at most `stillWithinFanHours` of running, known or possible, lie between the end and that
 * day: beyond, the grain has changed more than a reading in moving air errs. Where the fan ran within that day for more than
 * `oneStateFanHours`, the readings on the moment's side of the run stand alone, if no sensor is lost by that.
 *
 * @param sensors  believed readings
 * @param spans    null: nobody knows when the fan ran
 * @returns        null where there is no reading
 */
export function momentWindow(
  moment: MomentName,
  sensors: readonly SensorReadings[],
  fromMs: number,
  toMs: number,
  spans: FanSpans | null,
  { stillWithinFanHours, oneStateFanHours }: Pick<MomentLimits, 'stillWithinFanHours' | 'oneStateFanHours'>,
): MomentWindow | null {
  const still = dayOf(moment, sensors, true);
  if (still !== null && spans !== null) {
    const [gapFrom, gapTo] = gapOf(moment, still, fromMs, toMs);
    const { on, unknown } = hoursBetween(spans, gapFrom, gapTo);
    if (on + unknown <= stillWithinFanHours) {
      const span = oneStateFanHours === null ? still : oneState(moment, still, sensors, spans, oneStateFanHours);
      return toWindow(span, true, spans, gapFrom, gapTo);
    }
  }
  const all = dayOf(moment, sensors, false);
  if (all === null) return null;
  return toWindow(all, false, spans, ...gapOf(moment, all, fromMs, toMs));
}

function toWindow(span: Span, stillAir: boolean, spans: FanSpans | null, gapFrom: number, gapTo: number): MomentWindow {
  const missedFanHours = spans === null ? 0 : likelyHours(spans, gapFrom, gapTo);
  return { span, stillAir, missedFanHours, slidMs: Math.max(0, gapTo - gapFrom) };
}

function gapOf(moment: MomentName, day: Span, fromMs: number, toMs: number): [number, number] {
  return moment === 'start' ? [fromMs, Math.max(fromMs, day.fromMs)] : [Math.min(toMs, day.toMs), toMs];
}

function dayOf(moment: MomentName, sensors: readonly SensorReadings[], stillOnly: boolean): Span | null {
  const edges = sensors
    .map(({ air, timeMs }) => {
      const last = moment === 'end';
      const still = last ? air.lastIndexOf(AIR_STILL) : air.indexOf(AIR_STILL);
      const any = last ? timeMs.length - 1 : 0;
      return timeMs[stillOnly ? still : any];
    })
    .filter((ms) => ms !== undefined)
    .sort((a, b) => (moment === 'start' ? a - b : b - a));
  if (edges.length === 0) return null;
  const half = edges[Math.ceil(edges.length / 2) - 1];
  // Spans are half open: the last reading itself belongs to its day.
  return moment === 'start' ? { fromMs: half, toMs: half + DAY_MS } : { fromMs: half + 1 - DAY_MS, toMs: half + 1 };
}

/** The part of a day of still air that lies on the moment's side of the running within it; the day where a sensor has no reading there. */
function oneState(
  moment: MomentName,
  day: Span,
  sensors: readonly SensorReadings[],
  spans: FanSpans,
  mostFanHours: number,
): Span {
  const stillTimes = sensors.map(({ air, timeMs }) =>
    timeMs.filter((ms, i) => air[i] === AIR_STILL && ms >= day.fromMs && ms < day.toMs),
  );
  const read = stillTimes.filter((times) => times.length > 0);
  const near = (ms: number) => {
    const { on, unknown } =
      moment === 'start' ? hoursBetween(spans, day.fromMs, ms) : hoursBetween(spans, ms, day.toMs);
    return on + unknown <= mostFanHours;
  };
  const kept = read.map((times) => times.filter(near));
  if (kept.some((times) => times.length === 0) || kept.every((times, i) => times.length === read[i].length)) return day;
  const edges = kept.map((times) => (moment === 'start' ? times[times.length - 1] : times[0]));
  return moment === 'start'
    ? { ...day, toMs: Math.min(day.toMs, Math.max(...edges) + 1) }
    : { ...day, fromMs: Math.min(...edges) };
}

/** Known fan hours, and hours of which no log tells, within [fromMs, toMs). */
function hoursBetween(spans: FanSpans, fromMs: number, toMs: number): { on: number; unknown: number } {
  if (!(toMs > fromMs)) return { on: 0, unknown: 0 };
  const on = fanHoursBetween(spans, fromMs, toMs);
  let offMs = 0;
  for (let i = 0; i < spans.state.length; i++) {
    if (spans.state[i] !== FAN_OFF) continue;
    offMs += Math.max(0, Math.min(toMs, spans.endMs[i]) - Math.max(fromMs, spans.startMs[i]));
  }
  return { on, unknown: Math.max(0, (toMs - fromMs - offMs) / HOUR_MS - on) };
}

/** Fan hours as the log tells them, with its silence and what it leaves out at its ends in the upper end; missing where it tells nothing. */
export function loggedHours(spans: FanSpans, fromMs: number, toMs: number): Estimate {
  const { on, unknown } = hoursBetween(spans, fromMs, toMs);
  const all = Math.max(0, toMs - fromMs) / HOUR_MS;
  return all > 0 && unknown >= all - 1e-9
    ? withheld('No log tells when the fan ran in this time.')
    : estimate(on, on, on + unknown);
}

/** Known fan hours plus, for the time that no log tells of, the share of time that the fan ran otherwise. */
export function likelyHours(spans: FanSpans, fromMs: number, toMs: number): number {
  const { on, unknown } = hoursBetween(spans, fromMs, toMs);
  if (unknown === 0 || spans.state.length === 0) return on;
  const whole = hoursBetween(spans, spans.startMs[0], spans.endMs[spans.endMs.length - 1]);
  const known = (spans.endMs[spans.endMs.length - 1] - spans.startMs[0]) / HOUR_MS - whole.unknown;
  return on + (known > 0 ? (unknown * whole.on) / known : 0);
}
