import { zoneOf } from '../../base/zone.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { FittedValues } from '../model/run-spec-of.ts';
import { runSpecOf } from '../model/run-spec-of.ts';
import type { BinReview } from '../types.ts';
import { localYear } from './carry-date.ts';
import { type StrategyHeldBack, yearsHeldBack } from './held-back-years.ts';
import { outdoorAir } from './outdoor-air.ts';
import { yearSpec, yearsOnFile } from './weather-years.ts';

/** Rules in all years on file, or a sentence why not. */
export type BinHeldBack = { rules: readonly StrategyHeldBack[]; why: null } | { rules: readonly []; why: string };

/**
 * What held each year back, by a bin's fitted bed in the weather of all years on file, the season's own among them.
 *
 * @param fitted      of a model that is trusted
 * @param strategies  ids
 */
export function seasonHeldBack(
  loaded: LoadedSeason,
  review: BinReview,
  fitted: Partial<FittedValues>,
  strategies: readonly string[],
): BinHeldBack {
  const { season } = loaded;
  if (review.bin.goal !== 'dry') return without('It was not to be dried, and only what holds drying back is told.');
  const { spec, why } = runSpecOf(loaded, review, fitted);
  if (spec === null) return without(why);
  const { hours, endHour } = spec;
  const zone = zoneOf(season.site.timeZone);
  const air = outdoorAir(loaded, hours.pressurePa);
  const years = yearsOnFile(hours.startMs, hours.startMs + 3_600_000 * endHour, air, zone);
  if (years.every((year) => year === localYear(zone, hours.startMs))) {
    return without(
      'No weather of other years is on file. Add an archive of past weather to season.yaml under files with role: history.',
    );
  }
  // Money is not asked for, so no tariff.
  const specs = years.map((year) => yearSpec(spec, air, { zone, tariff: null }, year));
  return { rules: yearsHeldBack(specs, strategies), why: null };
}

function without(why: string): BinHeldBack {
  return { rules: [], why };
}
