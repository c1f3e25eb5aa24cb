import type { BinLog } from './bin-log.ts';

type Ran = { fan: Pick<BinLog['fan'], 'on'>; relativeFlow: Float64Array };

/** Less than this of the usual airflow is that of a part of the fans; pressure as logged moves it by some hundredths. */
const PART_OF_FANS = 0.95;

/**
 * Part of the full airflow that was blown in each hour as logged, 0 to 1, [hours]: an hour in which a part of the fans ran is that part
 * of an hour with all of them.
 */
export function loggedShares({ fan, relativeFlow }: Ran): Float64Array {
  return fan.on.map((share, hour) => (relativeFlow[hour] < PART_OF_FANS ? share * relativeFlow[hour] : share));
}

/** Fan hours in which a part of the fans ran, h. */
export function hoursInPart({ fan, relativeFlow }: Ran): number {
  return fan.on.reduce((sum, share, hour) => sum + (relativeFlow[hour] < PART_OF_FANS ? share : 0), 0);
}
