import { SUN_K } from './outdoor-days.ts';
import { STEP_H } from './step-grid.ts';

/** What may have reached the grain of a bin between two readings; every array is [steps]. */
export interface GapAir {
  /** mean of the day's outdoor air, C; NaN where not known */
  outdoorC: Float64Array;
  /** hours of a step in which a fan ran or may have run */
  blownH: Float64Array;
  /** a heater may have warmed the air that was blown in, nobody knows how far */
  heated: boolean;
}

/** A place between two of its readings. */
export interface GapReach {
  /** the coldest and the warmest it may have been, C */
  lowC: number;
  highC: number;
  /** how much of the way from the first reading to the second it has gone at a step within, 0 to 1 */
  part: (step: number) => number;
}

/** Blown for so long a place may have met all of the air that came in: a front of drying is through in a day, one of cooling with little air in a week (common practice), h. */
const THROUGH_H = 120;
/** Beyond both readings a place goes this part of the way to the coldest or warmest day's air at most: by drawn seasons (10871 to 10882) the means of nine in ten weeks keep within. */
const MOST_OF_WAY = 0.5;
/** In an hour of moving air grain goes as far as in so many of rest (drawn seasons: rests of a week part by 0.8 K, weeks of the fan by 7). */
const MOVING_TIMES = 20;
/** Under so many hours air has not moved the grain (a fan tried out). */
const LEAST_BLOWN_H = 1;
/** Swings that last two weeks fade by 1/e over so much grain, m: the root of diffusivity (1.1e-7 m2/s) times period over pi. carslaw-jaeger-1959 */
const FADING_M = 0.21;

/**
 * What readings tell of the time between them: grain goes from one to the other, mostly while air moves; it may have gone beyond
 * both towards the air that was blown in, the longer the farther, and near an edge towards the outdoor air.
 *
 * @param air      null: not known
 * @param steps    of the two readings
 * @param readC    the colder and the warmer of them
 * @param toEdgeM  to the nearest of surface, floor and wall, m
 * @returns        null where nobody can tell: air was blown that is not known
 */
export function gapReach(
  air: GapAir | null,
  [before, after]: readonly [number, number],
  [lowC, highC]: readonly [number, number],
  toEdgeM: number,
): GapReach | null {
  if (air === null) return null;
  const { outdoorC, blownH, heated } = air;
  let sum = 0;
  let outLow = Number.POSITIVE_INFINITY;
  let outHigh = Number.NEGATIVE_INFINITY;
  let blowLow = Number.POSITIVE_INFINITY;
  let blowHigh = Number.NEGATIVE_INFINITY;
  let isKnown = true;
  const clock = new Float64Array(after - before);
  for (let i = before; i < after; i++) {
    sum += blownH[i];
    clock[i - before] = (i === before ? 0 : clock[i - before - 1]) + STEP_H + MOVING_TIMES * blownH[i];
    const out = outdoorC[i];
    if (Number.isNaN(out)) {
      if (blownH[i] > 0) isKnown = false;
      continue;
    }
    outLow = Math.min(outLow, out);
    outHigh = Math.max(outHigh, out);
    if (blownH[i] === 0) continue;
    blowLow = Math.min(blowLow, out);
    blowHigh = Math.max(blowHigh, out);
  }
  const isBlown = sum >= LEAST_BLOWN_H;
  if (isBlown && (heated || !isKnown)) return null;
  const whole = clock[clock.length - 1];
  const byAir = isBlown ? MOST_OF_WAY * Math.min(1, sum / THROUGH_H) : 0;
  const byEdge = Math.exp(-toEdgeM / FADING_M);
  const beyond = (share: number, overK: number) => (overK > 0 ? share * overK : 0);
  return {
    lowC: lowC - Math.max(beyond(byAir, lowC - blowLow), beyond(byEdge, lowC - outLow)),
    highC: highC + Math.max(beyond(byAir, blowHigh - highC), beyond(byEdge, outHigh + SUN_K - highC)),
    part: (step) => (clock[step - 1 - before] + clock[step - before]) / 2 / whole,
  };
}
