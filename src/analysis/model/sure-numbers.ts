import { type Estimate, withheld } from '../../base/estimate.ts';
import { flowRangeSaid } from '../airflow/flow-range-said.ts';

/** Half of an interval over the airflow: beyond it one number in five and more would be over 10 % off, and none is told. */
const MOST_FLOW_REL = 0.125;
/** The same of the moisture at the end, points. */
const MOST_END_POINTS = 0.5;

/**
 * The airflow where its 90 % interval leaves no more than 12.5 % open on either side.
 *
 * @param volumeM3  of the grain
 */
export function sureFlow(flow: Estimate, volumeM3: number): Estimate {
  const { interval } = flow;
  if (interval === null || interval[1] <= (1 + MOST_FLOW_REL) ** 2 * interval[0]) return flow;
  return withheld(
    `The fit leaves ${flowRangeSaid(interval, volumeM3)} of the whole bin open; what would help is the static pressure while the fan runs, and more cables.`,
  );
}

/**
 * The moisture at the end where its 90 % interval leaves no more than half a point open on either side.
 *
 * @param doubt  why it is open whatever the interval says; null: it is not
 */
export function sureEnd(end: Estimate, doubt: string | null): Estimate {
  const { interval } = end;
  if (interval === null) return end;
  if (doubt !== null) return withheld(doubt);
  if (50 * (interval[1] - interval[0]) <= MOST_END_POINTS) return end;
  const [low, high] = interval.map((one) => (100 * one).toFixed(1));
  return withheld(`The fit leaves the moisture at the end open between ${low} and ${high} %.`);
}
