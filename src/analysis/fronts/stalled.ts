import type { FrontArrival } from '../types.ts';
import { LEAST_CHANGE_K } from './front-limits.ts';

/** One wording for all, in both units: pages fold equal reasons into one footnote. */
export const TOO_SMALL = `The temperature changed by less than ${LEAST_CHANGE_K} °C (${(LEAST_CHANGE_K * 1.8).toFixed(1)} °F): that is no front.`;

export const STALLED = 'The front did not get there, though it came to most of the other cables at this height.';

/** Sensors of other cables this near in height tell whether there was a front to come. */
const SAME_HEIGHT_M = 1;

/**
 * A sensor that hardly changed while most of its neighbours at that height saw the front pass was not spared a front: the
 * front stalled before it. Where the front came to a sensor of the same cable farther on, it did not stall.
 */
export function tellStalled(arrivals: readonly FrontArrival[], air: 'up' | 'down'): FrontArrival[] {
  const beyond = (other: FrontArrival, one: FrontArrival) =>
    other.cable === one.cable && other.fanHours !== null && other.heightM > one.heightM === (air === 'up');
  return arrivals.map((one) => {
    if (one.why !== TOO_SMALL || arrivals.some((other) => beyond(other, one))) return one;
    const beside = arrivals.filter(
      (other) =>
        other.cable !== one.cable && other.unseen !== true && Math.abs(other.heightM - one.heightM) <= SAME_HEIGHT_M,
    );
    const came = new Set(beside.filter((other) => other.fanHours !== null).map((other) => other.cable)).size;
    const cables = new Set(beside.map((other) => other.cable)).size;
    return cables >= 2 && came * 2 > cables ? { ...one, why: STALLED } : one;
  });
}
