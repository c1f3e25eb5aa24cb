import { DAY, HOUR, localClock, MINUTE } from '../../sample/calendar.ts';
import { toWetBasis } from '../../sample/kernels.ts';
import type { SeasonDraw } from './plan.ts';
import { type BinTrace, STEP_MS } from './run-bin.ts';

export interface BinTruth {
  /** wet basis, %: means of the first and last 24 hours, averaged as dry basis */
  startWb: number;
  endWb: number;
  points: number;
  cost: number;
  fanHours: number;
  /** by the grain, between those two days, kg */
  waterKg: number;
  /** what the air carried off in all, kg */
  carriedKg: number;
  flowM3S: number;
}

/** What the generator knows of a bin by its own account. */
export function binTruth(season: SeasonDraw, trace: BinTrace): BinTruth {
  const day = DAY / STEP_MS;
  const mean = (from: number, to: number) => {
    let sum = 0;
    for (let s = from; s < to; s++) sum += trace.meanDb[s];
    return sum / (to - from);
  };
  const startDb = mean(0, day);
  const endDb = mean(trace.steps - day, trace.steps);
  return {
    startWb: toWetBasis(startDb),
    endWb: toWetBasis(endDb),
    points: toWetBasis(startDb) - toWetBasis(endDb),
    cost: costOf(season, trace),
    fanHours: (trace.on.reduce((sum, on) => sum + on, 0) * STEP_MS) / HOUR,
    waterKg: (trace.dryKg * (startDb - endDb)) / 100,
    carriedKg: trace.waterByAirKg,
    flowM3S: trace.flowM3S,
  };
}

/** Energy cut at 22:00 and 06:00 by five minutes, a peak for every month with a run, and a year's charge for the horsepower. */
function costOf({ tariff }: SeasonDraw, trace: BinTrace): number {
  const { kw, hp } = trace.draw.fan;
  let cost = tariff.connected * hp;
  const months = new Set<string>();
  const piece = 5 * MINUTE;
  for (let step = 0; step < trace.steps; step++) {
    if (trace.on[step] === 0) continue;
    for (let ms = trace.startMs + step * STEP_MS; ms < trace.startMs + (step + 1) * STEP_MS; ms += piece) {
      const local = localClock(ms);
      const hour = local.getUTCHours();
      const atNight = tariff.night !== null && (hour >= 22 || hour < 6);
      cost += ((atNight ? tariff.night! : tariff.day) * kw * piece) / HOUR;
      months.add(local.toISOString().slice(0, 7));
    }
  }
  return cost + tariff.demand * kw * months.size;
}
