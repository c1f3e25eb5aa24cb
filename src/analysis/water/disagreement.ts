import type { Estimate } from '../../base/estimate.ts';
import type { BinAirflow } from '../types.ts';

/** Below: the whole interval lies under the other's. */
export type Order = 'below' | 'above' | 'overlap' | null;

/** How one interval lies to another; null where one is missing. */
export function orderOf(one: Estimate, other: Estimate): Order {
  if (one.interval === null || other.interval === null) return null;
  if (one.interval[1] < other.interval[0]) return 'below';
  return one.interval[0] > other.interval[1] ? 'above' : 'overlap';
}

interface Pattern {
  when: { pair: 'air and sensors' | 'tickets and sensors' | 'tickets and air'; order: 'below' | 'above' };
  says: string;
}

/**
 * What a disagreement most likely means. Reasoned from what each way hangs on, not measured: air hangs on the airflow, the
 * uppermost sensors and the plenum's humidity; sensors on their drift, the moments they were read and the places they hang in;
 * tickets on the meter at the scale and on no load being missing.
 */
export const PATTERNS: readonly Pattern[] = [
  {
    when: { pair: 'air and sensors', order: 'above' },
    says: 'The air seems to have carried off more than the sensors missed: most likely the uppermost sensors read too wet or the plenum’s humidity too low, or air went through grain between the cables that dried more than they saw. An airflow that is too high would do it too.',
  },
  {
    when: { pair: 'air and sensors', order: 'below' },
    says: 'The sensors say more than the air can have carried: most likely they drifted or were read in moving air at one of the two moments, or the uppermost sensors read too dry or the plenum’s humidity too high. An airflow that is too low would do it too.',
  },
  {
    when: { pair: 'tickets and sensors', order: 'above' },
    says: 'The scale says more than the sensors: most likely the sensors read too dry at the start or too wet at the end, or a meter at the scale was off, or loads dried on their way.',
  },
  {
    when: { pair: 'tickets and sensors', order: 'below' },
    says: 'The scale says less than the sensors: most likely a meter at the scale or the cables are off by a point or so, or the grain took up water after the last readings.',
  },
  {
    when: { pair: 'tickets and air', order: 'above' },
    says: 'The scale says more than the air carried: most likely the airflow is higher than told, or grain lost water with the fans off and on the road.',
  },
  {
    when: { pair: 'tickets and air', order: 'below' },
    says: 'The scale says less than the air carried: most likely the airflow is lower than told, or air left the plenum without passing the grain.',
  },
];

/** Whole sentences for every pair that disagrees. */
export function likelyWater(bySensors: Estimate, byAir: Estimate, byTickets: Estimate, airflow: BinAirflow): string[] {
  const pairs = [
    { pair: 'air and sensors', order: orderOf(byAir, bySensors) },
    { pair: 'tickets and sensors', order: orderOf(byTickets, bySensors) },
    { pair: 'tickets and air', order: orderOf(byTickets, byAir) },
  ] as const;
  const said = pairs.flatMap(({ pair, order }) =>
    PATTERNS.filter(({ when }) => when.pair === pair && when.order === order).map(({ says }) => says),
  );
  if (said.length > 0 && airflow.agree === false) said.push('The two airflows disagree as well, so look there first.');
  if (said.length > 0 && airflow.from === 'pressure')
    said.push(
      'The airflow stands on static pressure alone; more packing or fines than assumed makes it lower than told.',
    );
  return said;
}
