import type { BinFronts } from '../../../src/analysis/types.ts';
import { DAY, HOUR } from '../../sample/calendar.ts';
import { type BinTrace, STEP_MS } from './run-bin.ts';

/** One sensor of a bin that was cooled, beside the truth. */
export interface FrontCase {
  season: number;
  running: 'continuous' | 'nights';
  /** fan hours between the kit's arrival and the true one; null: the kit saw none */
  offHours: number | null;
  /** the second steepest fall, 12 fan hours or more away, over the steepest: near 1 the air itself fell twice and no one moment is the front's */
  runnerUp: number;
}

/**
 * True arrivals by the contract's definition on temperatures without error: half of the way from the 12 hours before the
 * fan began to the mean from 6 to 30 fan hours after the steepest fall, looked for around that fall. Only sensors that the front truly
 * passed; the kit's arrival is that of its cooling campaign in which the true one lies.
 */
export function frontCases(season: number, trace: BinTrace, fronts: BinFronts): FrontCase[] {
  const { draw } = trace;
  if (draw.goal !== 'cool') return [];
  const onSteps = Array.from(trace.on.keys()).filter((step) => trace.on[step] === 1);
  if (onSteps.length === 0) return [];
  const clockAt = (ms: number) => {
    const step = (ms - trace.startMs) / STEP_MS;
    let hours = 0;
    for (const on of onSteps) hours += Math.min(1, Math.max(0, step - on)) * (STEP_MS / HOUR);
    return hours;
  };
  return trace.sensors.flatMap((sensor) => {
    if (sensor.heightM >= draw.depthM) return [];
    const found = trueArrival(sensor.tempC, onSteps);
    if (found === null) return [];
    const trueMs = trace.startMs + found.step * STEP_MS;
    const told = fronts.campaigns
      .filter((one) => one.kind === 'cooling' && one.span.fromMs <= trueMs && one.span.toMs >= trueMs - DAY / 4)
      .flatMap((one) => one.arrivals)
      .filter((one) => one.cable === sensor.cable && one.sensor === sensor.sensor && one.arrivedMs !== null)
      .map((one) => clockAt(one.arrivedMs!) - clockAt(trueMs));
    const offHours = told.length === 0 ? null : told.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    return [{ season, running: draw.running as 'continuous' | 'nights', offHours, runnerUp: found.runnerUp }];
  });
}

/** @param onSteps  steps with the fan on, rising */
function trueArrival(tempC: Float32Array, onSteps: readonly number[]): { step: number; runnerUp: number } | null {
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
  return at >= series.length ? null : { step: onSteps[at], runnerUp: second / falls[steepest] };
}
