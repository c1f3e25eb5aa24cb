import type { Estimate } from '../../base/estimate.ts';
import type { Goal } from '../../season/season.ts';
import type { BinConditions } from './comparison.ts';

export type ConditionName = 'airflow' | 'start moisture' | 'end moisture' | 'air moisture' | 'air temperature';

/** A condition in which a bin clearly differs from the other, and which way that pulls its fan hours. */
export interface ConditionLean {
  condition: ConditionName;
  /** own less the other's, in the condition's unit: cfm/bu, fractions, K */
  difference: number;
  /** `more`: by itself it would make a point take more fan hours than in the other bin */
  hours: 'more' | 'fewer';
}

/** Below these nothing is said: the air of two bins is known no better. */
const LEAST_AIR_WB = 0.005;
const LEAST_AIR_K = 2;

/**
 * What two bins' conditions would do to the fan hours for a point, each by itself: less air, a drier start or end and
 * damper or colder air make drying take more hours; for adding points a damper air and a drier start take fewer.
 * Directions only: how much each did, one season of a few bins cannot tell.
 *
 * @param sameCrop  the air's moisture is held against the other's in one crop alone
 * @returns         empty for a goal without points
 */
export function conditionLeans(
  goal: Goal,
  own: BinConditions,
  other: BinConditions,
  sameCrop: boolean,
): ConditionLean[] {
  if (goal !== 'dry' && goal !== 'condition') return [];
  const drying = goal === 'dry';
  const found: ConditionLean[] = [];
  /** @param moreWhenHigh  does more of it make a point take more hours? */
  const lean = (condition: ConditionName, difference: number | null, moreWhenHigh: boolean) => {
    if (difference === null) return;
    found.push({ condition, difference, hours: difference > 0 === moreWhenHigh ? 'more' : 'fewer' });
  };
  lean('airflow', clearDifference(own.airflowCfmPerBushel, other.airflowCfmPerBushel), false);
  if (sameCrop) {
    lean('start moisture', clearDifference(own.startWb, other.startWb), !drying);
    lean('end moisture', clearDifference(own.endWb, other.endWb), !drying);
    const air = [own.air.equilibriumWb.value, other.air.equilibriumWb.value];
    lean('air moisture', beyond(air[0], air[1], LEAST_AIR_WB), drying);
  }
  if (drying) lean('air temperature', beyond(own.air.outdoorC, other.air.outdoorC, LEAST_AIR_K), false);
  return found;
}

/** The difference where the intervals leave each other out, else null. */
function clearDifference(own: Estimate, other: Estimate): number | null {
  if (own.value === null || other.value === null) return null;
  const [low, high] = own.interval ?? [own.value, own.value];
  const [otherLow, otherHigh] = other.interval ?? [other.value, other.value];
  return low > otherHigh || high < otherLow ? own.value - other.value : null;
}

function beyond(own: number | null, other: number | null, least: number): number | null {
  return own === null || other === null || Math.abs(own - other) < least ? null : own - other;
}
