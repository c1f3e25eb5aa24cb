import { WORKING_PRESSURE_PA } from '../../season/checks/dead-current.ts';
import { FAN_ON, type FanSpans } from '../types.ts';
import { onAt } from './spans.ts';
import { middle } from './usual-interval.ts';

const HOUR_MS = 3_600_000;
/** Fewer hours of work, or of rest, tell nothing of the usual pressure; own judgement. */
const LEAST_HOURS = 24;
/** A pressure that keeps one value to the last digit for so long may be a dead sensor's; own judgement. */
const ONE_VALUE_HOURS = 48;
/** The fan at work makes at least so many times the pressure of the fan at rest: a sensor with an offset does not; own judgement. */
const APART_TIMES = 3;
/** A reading stands for the time to the next, but for no more than so many usual intervals. */
const REACH_INTERVALS = 3;

/** Fan hours by the pressure in the plenum and by the fans' log, over the time that the pressure was logged. */
export interface AgainstPlenum {
  plenumHours: number;
  logHours: number;
}

/**
 * How long a bin's fans worked by the static pressure in its plenum, and how long by their log in the same time. Sums are
 * compared and not moments, so that a clock that is off changes nothing.
 *
 * @param timeMs      [readings], ms UTC, rising
 * @param pressurePa  [readings], NaN is missing
 * @param flags       [readings], not 0: left out
 * @param spans       the bin's fans together
 * @returns           null where the pressure does not tell work from rest
 */
export function againstPlenum(
  timeMs: Float64Array,
  pressurePa: Float64Array,
  flags: ArrayLike<number>,
  spans: FanSpans,
): AgainstPlenum | null {
  const seen = pressureSeen(timeMs, pressurePa, flags, spans);
  return seen === null ? null : { plenumHours: seen.plenumHours, logHours: seen.logHours };
}

/** What the pressure of a plenum tells of work and rest, by its good readings. */
export interface PressureSeen extends AgainstPlenum {
  /** [good readings] Pa, whatever its sign; h that each stands for; 0: frozen; 1: the log says on */
  pascal: Float64Array;
  hours: Float64Array;
  living: Uint8Array;
  on: Float64Array;
  /** from this pressure on the fans are at work, and what they make then, Pa */
  above: number;
  usualPa: number;
}

/** @returns null where the pressure does not tell work from rest */
export function pressureSeen(
  timeMs: Float64Array,
  pressurePa: Float64Array,
  flags: ArrayLike<number>,
  spans: FanSpans,
): PressureSeen | null {
  const good = [...timeMs.keys()].filter((i) => flags[i] === 0 && Number.isFinite(pressurePa[i]));
  if (good.length < 2) return null;
  const at = Float64Array.from(good, (i) => timeMs[i]);
  const pascal = Float64Array.from(good, (i) => Math.abs(pressurePa[i]));
  const hours = hoursOf(at);
  const living = notFrozen(pascal, hours);
  const on = at.map((ms) => (onAt(spans, ms) === FAN_ON ? 1 : 0));
  const hoursWhere = (holds: (i: number) => boolean) =>
    hours.reduce((sum, each, i) => (living[i] === 1 && holds(i) ? sum + each : sum), 0);
  const logHours = hoursWhere((i) => on[i] === 1);
  const usualOn = logHours >= LEAST_HOURS ? middle(pascal.filter((_, i) => living[i] === 1 && on[i] === 1)) : 0;
  const above = Math.max(WORKING_PRESSURE_PA, usualOn / 2);
  const plenumHours = hoursWhere((i) => pascal[i] >= above);
  if (plenumHours < LEAST_HOURS) return null;
  const usual = (works: boolean) => middle(pascal.filter((pa, i) => living[i] === 1 && pa >= above === works));
  // Of a fan that hardly ever rested nothing shows the rest: then less than any fan at work makes.
  const rest = hoursWhere((i) => pascal[i] < above) < LEAST_HOURS ? WORKING_PRESSURE_PA : usual(false);
  const usualPa = usual(true);
  if (usualPa < APART_TIMES * rest) return null;
  return { plenumHours, logHours, pascal, hours, living, on, above, usualPa };
}

/** Hours that each reading stands for. */
function hoursOf(timeMs: Float64Array): Float64Array {
  const steps = timeMs.subarray(1).map((ms, i) => ms - timeMs[i]);
  const most = REACH_INTERVALS * middle(steps);
  return timeMs.map((_, i) => (i < steps.length ? Math.min(steps[i], most) / HOUR_MS : 0));
}

/** 0 where a reading belongs to a long stretch of one value. */
function notFrozen(pascal: Float64Array, hours: Float64Array): Uint8Array {
  const out = new Uint8Array(pascal.length).fill(1);
  for (let from = 0; from < pascal.length; ) {
    let to = from;
    let sum = hours[from];
    while (to + 1 < pascal.length && pascal[to + 1] === pascal[from]) sum += hours[++to];
    // A plenum at rest reads zero for weeks.
    if (sum >= ONE_VALUE_HOURS && pascal[from] >= WORKING_PRESSURE_PA) out.fill(0, from, to + 1);
    from = to + 1;
  }
  return out;
}
