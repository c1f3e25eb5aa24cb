import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IN_HINDSIGHT, SWEPT } from '../../src/analysis/strategies/run-strategy.ts';
import type { SweepPlan } from '../../src/analysis/strategies/sweep-plan.ts';
import { AS_IT_IS, VARIED, type Variant } from '../../src/analysis/strategies/variant.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import { listed } from '../../src/base/listed.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import type { Season } from '../../src/season/season.ts';
import { readWay } from '../../src/simulation/strategies/chosen-way.ts';
import { PLAN_SHAPE } from '../sweep/manifest.ts';
import { seasonBins } from '../sweep/season-bins.ts';
import { type SweepOptions, sweepOptions } from '../sweep/sweep-options.ts';

/** What a review asks of a sweep: every rule and the log, for every bin in each year on file. */
export type DueBins = readonly Pick<SweepPlan['bins'][number], 'id' | 'weathers'>[];

/** The bins of a season with the years on file for each, by the season's review; nothing is fitted. */
export function dueBins(loaded: LoadedSeason, { bins }: SeasonReview): DueBins {
  const none = () => {
    throw new Error('no bin is fitted to plan a sweep');
  };
  return seasonBins(loaded, bins, null, null, () => {}, none, none).planned;
}

/** The plan of the sweep in a season's folder, whatever files and kit it is of; null where there is none to be read. */
export function planBeside({ folder }: Season): SweepPlan | null {
  const path = join(folder, 'sweep', 'sweep.json');
  if (!existsSync(path)) return null;
  try {
    return PLAN_SHAPE.parse(JSON.parse(readFileSync(path, 'utf8')).plan);
  } catch {
    return null;
  }
}

/** Bins, rules and years that a plan leaves out of what is due, in words; null where it has all. */
export function lackOf(plan: SweepPlan, due: DueBins): string | null {
  const bins = due.filter(({ id }) => !plan.bins.some((one) => one.id === id)).map(({ id }) => id);
  const rules = DUE_RULES.filter((id) => !plan.strategies.includes(id));
  const years = due.flatMap(({ id, weathers }) => {
    const has = plan.bins.find((one) => one.id === id)?.weathers;
    return has === undefined ? [] : weathers.filter((one) => !has.includes(one));
  });
  const parts = [
    ...(bins.length === 0 ? [] : [`${bins.length === 1 ? 'bin' : 'bins'} ${listed(bins)}`]),
    ...(rules.length === 0 ? [] : [listed(rules)]),
    ...(years.length === 0 ? [] : [`${[...new Set(years)].length} of the years`]),
  ];
  return parts.length === 0 ? null : parts.join('; ');
}

const DUE_RULES = SWEPT.filter((id) => id !== IN_HINDSIGHT);

/** What is due and, so that nothing is lost, what the sweep before held beyond it: searches, ways of a user's choice, steps, days. */
export function optionsKeeping(before: SweepPlan | null): SweepOptions {
  const due = sweepOptions({ hindsight: false });
  if (before === null) return due;
  const ways = before.strategies.filter((name) => !SWEPT.includes(name) && readWay(name).ok);
  const searched = before.strategies.includes(IN_HINDSIGHT) ? [IN_HINDSIGHT] : [];
  const days = before.by.filter((day) => !isMonthEnd(day));
  return {
    ...due,
    strategies: [...DUE_RULES, ...ways, ...searched],
    variants: [AS_IT_IS, ...STEPS.filter((step) => before.variants.some((one) => isSame(one, step)))],
    // Month ends are the usual ones, and told anew for all bins.
    by: days.length === 0 ? null : before.by,
  };
}

const STEPS: readonly Variant[] = Object.values(VARIED).flat();

/** What the sweep before held beyond what is due, in words; null for nothing. */
export function keptSaid({ strategies, variants }: SweepOptions): string | null {
  const more = strategies.filter((name) => !DUE_RULES.includes(name));
  const said = [...more, ...(variants.length > 1 ? [`${variants.length - 1} steps moved`] : [])];
  return said.length === 0 ? null : listed(said);
}

function isSame(a: Variant, b: Variant): boolean {
  return a.airflowFactor === b.airflowFactor && a.fillDays === b.fillDays && a.startPoints === b.startPoints;
}

function isMonthEnd(day: string): boolean {
  // Of a year that is no leap year: 28 February counts as its month's end.
  const next = new Date(Date.parse(`2023-${day}T00:00:00Z`) + 86_400_000);
  return next.getUTCDate() === 1;
}
