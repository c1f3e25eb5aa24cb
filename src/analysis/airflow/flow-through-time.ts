import { firstNotBefore } from '../../base/first-not-before.ts';
import { halve } from '../../base/halve.ts';
import { median } from '../../base/stats/quantile.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { resistanceCurveOf } from '../../bin/resistance-curves.ts';
import type { Bin } from '../../season/season.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import type { FanSeason } from '../types.ts';
import { fanSetAt } from './fan-sets.ts';
import { byStage, FULL_SHARE, LEAST_DEPTH_M, type PressureLog, stageKey } from './pressure-log.ts';

/** A pressure this near in time, ms, tells the airflow of a moment. */
const NEAR_MS = 6 * 3_600_000;
/** By which power airflow falls as a bed gets deeper, and rises with fans in parallel: between a fan of one airflow and one of one pressure. Working assumption. */
const DEPTH_POWER = 0.4;
const FANS_POWER = 0.7;

/** Airflow at a moment over that at full depth with the main set of fans. */
export type RelativeFlow = (ms: number) => number;

/**
 * How the airflow went through the season: by the logged pressure near the moment, else by that usual at its depth and fans,
 * else by depth and number of fans.
 *
 * @param set  the fans that the airflow is told for
 */
export function relativeFlow(
  bin: Bin,
  log: PressureLog,
  fans: readonly FanSeason[],
  depthM: number,
  set: string,
): RelativeFlow {
  const [a, b] = shapeOf(bin.grain.crop);
  const velocityAt = (pressurePa: number, deepM: number) => velocityOf(a, b, pressurePa / deepM / bin.airflowFactor);
  const usual = byStage(log);
  const usualVelocity = new Map(
    [...usual].map(([key, own]) => [key, velocityAt(median(own.map((i) => log.pressurePa[i])), log.depthM[own[0]])]),
  );
  const mainKeys = [...usual].filter(
    ([, own]) => log.depthM[own[0]] >= FULL_SHARE * depthM && log.fanSet[own[0]] === set,
  );
  const main = mainKeys.sort((p, q) => q[1].length - p[1].length)[0];
  const reference = main === undefined ? null : (usualVelocity.get(main[0]) ?? null);
  const many = Math.max(1, set.split('+').filter((id) => id !== '').length);
  return (ms) => {
    const deepM = grainDepthAt(bin, ms) ?? depthM;
    if (!(deepM > LEAST_DEPTH_M)) return Number.NaN;
    const now = fanSetAt(fans, ms);
    if (reference !== null) {
      const near = nearest(log.timeMs, ms);
      if (
        near >= 0 &&
        Math.abs(log.timeMs[near] - ms) <= NEAR_MS &&
        log.fanSet[near] === now &&
        log.depthM[near] === deepM
      )
        return velocityAt(log.pressurePa[near], deepM) / reference;
      const known = usualVelocity.get(stageKey(deepM, now));
      if (known !== undefined) return known / reference;
    }
    const running = Math.max(1, now.split('+').filter((id) => id !== '').length);
    return (depthM / deepM) ** DEPTH_POWER * (running / many) ** FANS_POWER;
  };
}

/** Only the shape counts here; corn's stands in for a crop without constants. */
function shapeOf(crop: string): [number, number] {
  try {
    const { a, b } = resistanceCurveOf(crop);
    return [a, b];
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const { a, b } = resistanceCurveOf('corn');
    return [a, b];
  }
}

/** As `velocityOfPressureMS`, but carried beyond what was measured, for the ratio of two velocities. */
function velocityOf(a: number, b: number, paM: number): number {
  return halve(0, 2, (velocityMS) => resistancePaM(a, b, velocityMS) < paM, 50);
}

function nearest(timeMs: Float64Array, ms: number): number {
  const next = firstNotBefore(timeMs, ms);
  if (next >= timeMs.length) return timeMs.length - 1;
  return next > 0 && ms - timeMs[next - 1] < timeMs[next] - ms ? next - 1 : next;
}
