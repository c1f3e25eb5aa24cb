import type { Season } from '../../season/season.ts';

/** Among how many bins a fan's energy and cost are parted: each that season.yaml lists it under carries an equal part. */
export function binsOnFan(season: Pick<Season, 'bins'>, fanId: string): number {
  return Math.max(1, season.bins.filter((bin) => bin.fanIds.includes(fanId)).length);
}
