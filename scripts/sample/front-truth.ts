import { type BinRun, type FanRun, STEP_MS } from './bin-run.ts';
import { HOUR } from './calendar.ts';

/** When the front came to one sensor, by the contract's definition, on temperatures without error. */
export interface TrueArrival {
  cable: string;
  sensor: number;
  heightM: number;
  arrivedMs: number | null;
  fanHours: number | null;
  aheadC: number | null;
  behindC: number | null;
  /** steepest change at least 12 fan hours away, over the steepest: near 1 the air itself fell twice and no one moment is the front's */
  runnerUp: number | null;
  why: string | null;
}

/** Fan hours run since `fromMs` up to each step, [steps + 1]. */
function fanClock(run: BinRun, runs: readonly FanRun[], fromStep: number, toStep: number): Float64Array {
  const out = new Float64Array(toStep - fromStep + 1);
  for (let s = fromStep; s < toStep; s++) {
    const a = run.startMs + s * STEP_MS;
    const overlap = runs.reduce(
      (sum, one) => sum + Math.max(0, Math.min(one.toMs, a + STEP_MS) - Math.max(one.fromMs, a)),
      0,
    );
    out[s - fromStep + 1] = out[s - fromStep] + overlap / HOUR;
  }
  return out;
}

/**
 * Arrivals of one campaign: ahead is the mean of the 12 hours before it, behind the mean from 6 to 30 fan hours after the steepest change (as far
 * as the run goes), arrival the moment half-way. The steepest change is sought over 6 fan hours, in the front's direction, so that
 * a short wave of the entering air is not taken for the front.
 */
export function trueArrivals(
  run: BinRun,
  fanIds: readonly string[],
  fromMs: number,
  toMs: number,
  sign: -1 | 1,
): TrueArrival[] {
  const runs = fanIds.flatMap((id) => run.runs.get(id)!);
  const from = Math.round((fromMs - run.startMs) / STEP_MS);
  const to = Math.min(run.steps - 1, Math.ceil((toMs - run.startMs) / STEP_MS));
  const clock = fanClock(run, runs, from, to);
  const atFan = (hours: number): number => {
    // First step whose fan clock has reached the hours.
    let low = 0;
    let high = clock.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (clock[middle] >= hours) high = middle;
      else low = middle + 1;
    }
    return from + low;
  };
  const total = clock[clock.length - 1];
  return run.sensors.map((sensor) => {
    const base = { cable: sensor.cable, sensor: sensor.sensor, heightM: sensor.heightM };
    const none = (why: string): TrueArrival => ({
      ...base,
      arrivedMs: null,
      fanHours: null,
      aheadC: null,
      behindC: null,
      runnerUp: null,
      why,
    });
    if (sensor.heightM >= run.layerM * 64) return none('above the grain');
    const t = sensor.tempC;
    const mean = (a: number, b: number) => {
      let sum = 0;
      for (let s = a; s < b; s++) sum += t[s];
      return sum / Math.max(1, b - a);
    };
    const span = 6;
    const changes: { at: number; change: number }[] = [];
    for (let h = 0; h + span <= total; h += 0.25) {
      changes.push({ at: h + span / 2, change: sign * (t[atFan(h + span)] - t[atFan(h)]) });
    }
    const best = changes.reduce((most, one) => (one.change > most.change ? one : most), { at: -1, change: 0 });
    const { at } = best;
    const second = Math.max(0, ...changes.filter((one) => Math.abs(one.at - at) >= 12).map((one) => one.change));
    if (at < 0) return none("no change in the front's direction");
    if (total - at < 6) return none('the fan stopped before the front was through');
    const ahead = mean(Math.max(0, from - 72), from);
    const behind = mean(atFan(at + 6), Math.max(atFan(at + 6) + 1, atFan(Math.min(total, at + 30))));
    if (sign * (behind - ahead) < 3) return none('the change is under 3 C: no front');
    const half = (ahead + behind) / 2;
    let found = -1;
    for (let h = at; h >= 0 && found < 0; h -= 1 / 12) {
      // From the steepest change back to the last time it stood on the near side of half-way ...
      if (sign * (t[atFan(h)] - half) < 0) found = h;
    }
    if (found < 0) found = 0;
    let h = found;
    // ... and on to the crossing.
    while (h < total && sign * (t[atFan(h)] - half) < 0) h += 1 / 12;
    if (h >= total) return none('half-way was not reached');
    const step = atFan(h);
    return {
      ...base,
      arrivedMs: run.startMs + step * STEP_MS,
      fanHours: h,
      aheadC: ahead,
      behindC: behind,
      runnerUp: second / best.change,
      why: null,
    };
  });
}
