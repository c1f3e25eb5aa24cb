import type { Variant } from './variant.ts';

/** A bin as a sweep names it. */
export interface PlannedBin {
  id: string;
  name: string;
  /** as filled; null where not known */
  bushels: number | null;
  /** local date on which its run of the season begins; null where there is none */
  startOn: string | null;
  /** `season` and years, in the order of the rows */
  weathers: readonly string[];
}

/** All that a sweep will run, as plain data: the same for all its shards. */
export interface SweepPlan {
  format: 1;
  /** version of the kit and hash of the code that the runs hang on */
  kit: { version: string; code: string };
  /** hash of season.yaml and all files that it lists */
  season: { title: string; sha256: string; currency: string };
  strategies: readonly string[];
  /** the bin as it is, then what is moved */
  variants: readonly Variant[];
  /** days by which to tell the chance of being there, `MM-DD` */
  by: readonly string[];
  bins: readonly PlannedBin[];
}

/** Runs that share a bin, its weather and what is moved: one for each strategy, jobs `first` and on. */
export interface JobGroup {
  index: number;
  /** place in `SweepPlan.bins` */
  bin: number;
  weather: string;
  variant: Variant;
  first: number;
}

export const SEASON_WEATHER = 'season';

/** The groups of a plan in the order of the rows: by bin, weather, variant. */
export function jobGroups(plan: SweepPlan): JobGroup[] {
  const groups: JobGroup[] = [];
  plan.bins.forEach(({ weathers }, bin) => {
    for (const weather of weathers) {
      for (const variant of plan.variants) {
        const index = groups.length;
        groups.push({ index, bin, weather, variant, first: index * plan.strategies.length });
      }
    }
  });
  return groups;
}

/** The groups of shard `index` (from 1) of `of`: each of-th. */
export function shardGroups(groups: readonly JobGroup[], shard: { index: number; of: number }): JobGroup[] {
  return groups.filter((group) => group.index % shard.of === shard.index - 1);
}
