import type { BinLog } from './bin-log.ts';

/**
 * Part of the full airflow that was blown in each hour as logged, 0 to 1, [hours]: an hour in which a part of the fans ran is that part
 * of an hour with all of them.
 */
export function loggedShares({ fan, relativeFlow }: Pick<BinLog, 'fan' | 'relativeFlow'>): Float64Array {
  return fan.on.map((share, hour) => share * Math.min(1, relativeFlow[hour]));
}
