import type { BinFronts } from '../../../src/analysis/types.ts';
import { HOUR } from '../../sample/calendar.ts';
import type { Logs } from './log-season.ts';
import { type BinTrace, STEP_MS } from './run-bin.ts';

/** One sensor of a bin that was cooled, beside the truth. */
export interface FrontCase {
  season: number;
  running: 'continuous' | 'nights';
  /** fan hours between the kit's arrival and the true one; null: the kit saw none */
  offHours: number | null;
  /** the second steepest fall, 12 fan hours or more away, over the steepest: near 1 the air itself fell twice and no one moment is the front's */
  runnerUp: number;
  /** the sensor's log holds the arrival: see `heldByLog` */
  held: boolean;
}

/** An arrival this near to a campaign is one of its, clock time: a campaign is dated to the hour at best. */
const BESIDE_MS = 6 * HOUR;
/** Between readings farther apart than this, fan hours, nothing that happens is told to within six. */
const WIDEST_GAP_H = 12;

/**
 * True arrivals by the contract's definition on temperatures without error: half of the way from the 12 hours before the
 * fan began to the mean from 6 to 30 fan hours after the steepest fall, looked for around that fall. Only sensors that the front truly
 * passed; the kit's arrival is that of its cooling campaign in which the true one lies.
 */
export function frontCases(season: number, trace: BinTrace, logs: Logs, fronts: BinFronts): FrontCase[] {
  const { draw } = trace;
  if (draw.goal !== 'cool') return [];
  const onSteps = Array.from(trace.on.keys()).filter((step) => trace.on[step] === 1);
  if (onSteps.length === 0) return [];
  const clock = fanClock(trace);
  return trace.sensors.flatMap((sensor) => {
    if (sensor.heightM >= draw.depthM) return [];
    const found = trueArrival(sensor.tempC, onSteps);
    if (found === null) return [];
    const trueMs = trace.startMs + found.step * STEP_MS;
    const told = fronts.campaigns
      .filter(
        ({ kind, span }) => kind === 'cooling' && span.fromMs <= trueMs + BESIDE_MS && span.toMs >= trueMs - BESIDE_MS,
      )
      .flatMap((one) => one.arrivals)
      .filter((one) => one.cable === sensor.cable && one.sensor === sensor.sensor && one.arrivedMs !== null)
      .map((one) => clock(one.arrivedMs!) - clock(trueMs));
    const offHours = told.length === 0 ? null : told.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    const read = logs.grain
      .filter((one) => one.bin === draw.id && one.cable === sensor.cable && one.sensor === sensor.sensor)
      .map(({ ms }) => clock(ms));
    const held = heldByLog(read, clock(trueMs), found.steepestH, onSteps.length * (STEP_MS / HOUR));
    const running = draw.running as 'continuous' | 'nights';
    return [{ season, running, offHours, runnerUp: found.runnerUp, held }];
  });
}

/** Fan hours since the bin was filled, at a moment. */
function fanClock({ on, startMs, steps }: BinTrace): (ms: number) => number {
  const before = new Float64Array(steps + 1);
  for (let step = 0; step < steps; step++) before[step + 1] = before[step] + on[step] * (STEP_MS / HOUR);
  return (ms) => {
    const at = Math.min(steps, Math.max(0, (ms - startMs) / STEP_MS));
    const step = Math.min(steps - 1, Math.floor(at));
    return before[step] + (at - step) * (before[step + 1] - before[step]);
  };
}

/**
 * Whether a sensor's log holds what the definition asks for: readings no farther apart than `WIDEST_GAP_H` about the arrival
 * and the steepest fall, and over at least half of the hours behind it. Where it does not, null is the right answer; such
 * sensors are counted among all and printed on a line of their own.
 *
 * @param readH      fan hours of the sensor's readings, rising
 * @param endH       when the fan stopped for good
 */
export function heldByLog(readH: readonly number[], arrivalH: number, steepestH: number, endH: number): boolean {
  const [fromH, toH] = [steepestH + 6, Math.min(endH, steepestH + 30)];
  let unreadH = Math.max(0, toH - Math.max(fromH, readH.at(-1) ?? 0));
  for (let i = 0; i <= readH.length; i++) {
    const [a, b] = [readH[i - 1] ?? Number.NEGATIVE_INFINITY, readH[i] ?? Number.POSITIVE_INFINITY];
    if (b - a <= WIDEST_GAP_H) continue;
    if ([arrivalH, steepestH].some((hour) => hour > a && hour < b)) return false;
    if (i < readH.length) unreadH += Math.max(0, Math.min(b, toH) - Math.max(a, fromH));
  }
  return unreadH <= (toH - fromH) / 2;
}

/** @param onSteps  steps with the fan on, rising */
function trueArrival(
  tempC: Float32Array,
  onSteps: readonly number[],
): { step: number; runnerUp: number; steepestH: number } | null {
  const perHour = HOUR / STEP_MS;
  const first = onSteps[0];
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const ahead = mean(Array.from(tempC.slice(Math.max(0, first - 12 * perHour), first + 1)));
  const series = onSteps.map((step) => tempC[step]);
  const span = 6 * perHour;
  const falls = series.slice(span).map((value, i) => series[i] - value);
  if (falls.length === 0) return null;
  const steepest = falls.reduce((best, fall, i) => (fall > falls[best] ? i : best), 0);
  const middle = steepest + span / 2;
  const second = Math.max(0, ...falls.filter((_, i) => Math.abs(i - steepest) >= 12 * perHour));
  const after = series.slice(middle + 6 * perHour, middle + 30 * perHour);
  if (after.length < 6 * perHour) return null;
  const behind = mean(after);
  if (ahead - behind < 3) return null;
  const half = (ahead + behind) / 2;
  let at = middle;
  while (at > 0 && series[at] <= half) at--;
  while (at < series.length && series[at] > half) at++;
  if (at >= series.length) return null;
  return { step: onSteps[at], runnerUp: second / falls[steepest], steepestH: middle / perHour };
}
