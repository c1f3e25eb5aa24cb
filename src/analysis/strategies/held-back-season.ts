import { zoneOf } from '../../base/zone.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { localYear } from './carry-date.ts';
import { type StrategyHeldBack, yearsHeldBack } from './held-back-years.ts';
import { outdoorAir } from './outdoor-air.ts';
import { yearSpec, yearsOnFile } from './weather-years.ts';

/** Rules in all years on file, or a sentence why not. */
export type BinHeldBack = { rules: readonly StrategyHeldBack[]; why: null } | { rules: readonly []; why: string };

/**
 * What held each year back, by a bin's fitted bed in the weather of all years on file, the season's own among them.
 *
 * @param spec        of a model that is trusted, in the season's own weather
 * @param strategies  ids
 */
export function seasonHeldBack(loaded: LoadedSeason, spec: RunSpec, strategies: readonly string[]): BinHeldBack {
  const { season } = loaded;
  const { hours, endHour, goal } = spec;
  if (goal !== 'dry') return without('It was not to be dried, and only what holds drying back is told.');
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
