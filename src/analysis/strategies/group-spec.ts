import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { localYear } from './carry-date.ts';
import type { OutdoorAir } from './outdoor-air.ts';
import { SEASON_WEATHER } from './sweep-plan.ts';
import { type Variant, withAirflow, withStartMoisture } from './variant.ts';
import { type YearSite, yearSpec } from './weather-years.ts';

/** A bin ready to be swept. */
export interface SweepBin {
  site: YearSite;
  /** of the season; null where its model is not to be used */
  spec: RunSpec | null;
  why: string | null;
  /** share of each hour of the season's run in which the fan ran by its log; null without a log */
  logged: Float64Array | null;
}

/** A bin's season under a weather with something moved, or a sentence why there is none. */
export type GroupSpec = { spec: RunSpec; why: null } | { spec: null; why: string };

/**
 * @param weather  `season`: as it was; else the year in which the run begins
 */
export function groupSpec(
  spec: RunSpec,
  site: YearSite,
  air: OutdoorAir,
  weather: string,
  variant: Variant,
): GroupSpec {
  const made = inWeather(spec, site, air, weather, variant.fillDays);
  return made.spec === null ? made : withVariant(made.spec, variant);
}

/** The year whose weather a group takes; null: the season's as it was. */
export function weatherYear(spec: RunSpec, { zone }: YearSite, weather: string, fillDays: number): number | null {
  if (weather !== SEASON_WEATHER) return Number(weather);
  return fillDays === 0 ? null : localYear(zone, spec.hours.startMs);
}

function inWeather(spec: RunSpec, site: YearSite, air: OutdoorAir, weather: string, fillDays: number): GroupSpec {
  const year = weatherYear(spec, site, weather, fillDays);
  return year === null ? { spec, why: null } : yearSpec(spec, air, site, year, fillDays);
}

function withVariant(spec: RunSpec, { airflowFactor, startPoints }: Variant): GroupSpec {
  try {
    return { spec: withStartMoisture(withAirflow(spec, airflowFactor), startPoints), why: null };
  } catch (error) {
    if (error instanceof RangeError) return { spec: null, why: `${error.message}.` };
    throw error;
  }
}
