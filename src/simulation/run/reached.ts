import type { RunSpec } from './run-spec.ts';

/** The contract's "reached": the mean at most this far on the wrong side of the target, the wettest layer at most so far above it. */
export const MEAN_SLACK_WB = 0.002;
export const LAYER_SLACK_WB = 0.015;
const F_PER_K = 1.8;
/** For cooling: mean within 5 degF of the target, no layer more than 10 degF above. */
export const MEAN_SLACK_K = 5 / F_PER_K;
export const LAYER_SLACK_K = 10 / F_PER_K;

/** A bin's grain as it is judged: wet basis, degC. */
export interface Judged {
  grainWb: number;
  wettestWb: number;
  grainC: number;
  warmestC: number;
}

/**
 * Whether a bin has reached its target now. Never for a bin whose goal is to hold, or whose target is not stated.
 *
 * @source  the season contract's definition of "reached"
 */
export function reached(
  goal: 'dry' | 'cool' | 'condition' | 'hold',
  targetWb: number | null,
  targetC: number | null,
  { grainWb, wettestWb, grainC, warmestC }: Judged,
): boolean {
  switch (goal) {
    case 'dry':
      return targetWb !== null && grainWb <= targetWb + MEAN_SLACK_WB && wettestWb <= targetWb + LAYER_SLACK_WB;
    case 'condition':
      return targetWb !== null && grainWb >= targetWb - MEAN_SLACK_WB && wettestWb <= targetWb + LAYER_SLACK_WB;
    case 'cool':
      return targetC !== null && Math.abs(grainC - targetC) <= MEAN_SLACK_K && warmestC <= targetC + LAYER_SLACK_K;
    default:
      return false;
  }
}

/**
 * The hour from which a bin counts as reached, carried on by an hour: moisture has to stay where the target asks until the run's
 * end, or the hour is lost; a bin that has been cooled has been cooled, though spring warms what lies at its rim again.
 *
 * @param since  hour so far; NaN: not reached
 */
export function reachedSince(goal: RunSpec['goal'], since: number, isReached: boolean, hour: number): number {
  if (isReached) return Number.isNaN(since) ? hour : since;
  return goal === 'cool' ? since : Number.NaN;
}
