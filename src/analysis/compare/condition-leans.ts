import { type Estimate, estimate } from '../../base/estimate.ts';
import type { Goal } from '../../season/season.ts';
import type { BinConditions } from './comparison.ts';

export type ConditionName = 'airflow' | 'start moisture' | 'end moisture' | 'air moisture' | 'air temperature';

/** A condition in which a bin clearly differs from the other, and which way that pulls its fan hours. */
export interface ConditionLean {
  condition: ConditionName;
  /** own less the other's, in the condition's unit: cfm/bu, fractions, K; no interval: measured */
  difference: Estimate;
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
  const lean = (condition: ConditionName, difference: Estimate | null, moreWhenHigh: boolean) => {
    if (difference === null) return;
    found.push({ condition, difference, hours: Number(difference.value) > 0 === moreWhenHigh ? 'more' : 'fewer' });
  };
  lean('airflow', clearDifference(own.airflowCfmPerBushel, other.airflowCfmPerBushel), false);
  if (sameCrop) {
    lean('start moisture', clearDifference(own.startWb, other.startWb), !drying);
    lean('end moisture', clearDifference(own.endWb, other.endWb), !drying);
    lean('air moisture', airDifference(own, other), drying);
  }
  if (drying) lean('air temperature', warmer(own.air.outdoorC, other.air.outdoorC), false);
  return found;
}

/** The difference with both errors joined as squares, where the intervals leave each other out, else null. */
function clearDifference(own: Estimate, other: Estimate): Estimate | null {
  if (own.value === null || other.value === null) return null;
  const [low, high] = own.interval ?? [own.value, own.value];
  const [otherLow, otherHigh] = other.interval ?? [other.value, other.value];
  if (low <= otherHigh && high >= otherLow) return null;
  const value = own.value - other.value;
  const down = Math.hypot(own.value - low, otherHigh - other.value);
  const up = Math.hypot(high - own.value, other.value - otherLow);
  return estimate(value, value - down, value + up);
}

/** How much damper one bin's air was: the choice of isotherm moves both alike, so its interval spans the differences by each edition. */
function airDifference(own: BinConditions, other: BinConditions): Estimate | null {
  const [mine, theirs] = [own.air.equilibriumWb.value, other.air.equilibriumWb.value];
  if (mine === null || theirs === null || Math.abs(mine - theirs) < LEAST_AIR_WB) return null;
  const value = mine - theirs;
  const by = own.air.byIsotherm.flatMap(({ isotherm, moistureWb }) => {
    const same = other.air.byIsotherm.find((one) => one.isotherm === isotherm);
    return same === undefined ? [] : [moistureWb - same.moistureWb];
  });
  const [low, high] = [Math.min(value, ...by), Math.max(value, ...by)];
  return low <= 0 && high >= 0 ? null : estimate(value, low, high);
}

function warmer(own: number | null, other: number | null): Estimate | null {
  if (own === null || other === null || Math.abs(own - other) < LEAST_AIR_K) return null;
  return { value: own - other, interval: null, why: null };
}
