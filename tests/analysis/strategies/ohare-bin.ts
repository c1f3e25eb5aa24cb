import { join } from 'node:path';
import { bareSpec } from '../../../scripts/bench/sweep/bare-spec.ts';
import { standardPressurePa } from '../../../src/air/pressure.ts';
import { outdoorAir } from '../../../src/analysis/strategies/outdoor-air.ts';
import { yearSpec } from '../../../src/analysis/strategies/weather-years.ts';
import { localDayStart, zoneOf } from '../../../src/base/zone.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { noChecks } from '../../season/readers/load-of.ts';
import { fileOf, seasonOf } from '../../season/readers/season-of.ts';

export const CHICAGO = zoneOf('America/Chicago');
/** O'Hare stands 205 m above the sea. */
export const PRESSURE_PA = standardPressurePa(205);
export const YEARS = [2016, 2017, 2018] as const;
/** The archive's autumns, see the README there. */
export const OHARE = join(import.meta.dirname, 'ohare');
export const ohareFile = (year: number): string => `725300-94846-${year}.gz`;

const DEPTH_M = 5;
/** 1 cfm for each bushel of 1.2445 ft3: 0.01339 m3/s for each m3. */
const AIR_M3_M2S = DEPTH_M * (0.000471947 / 0.0352391);

/** The archive's three years as a season's past weather, through the readers. */
export async function ohareAir() {
  const files = YEARS.map((year) => fileOf('weather', ohareFile(year), { format: 'isd-lite', role: 'history' }));
  return outdoorAir(await loadSeason(seasonOf(OHARE, files), undefined, noChecks), PRESSURE_PA);
}

/** Corn at 1 cfm/bu from a day of autumn to the year's end, in no weather yet. `moistureWb`: as it comes in. */
export function bareBin(month: number, day: number, moistureWb: number): RunSpec {
  const startMs = localDayStart(CHICAGO, 2017, month, day);
  const count = Math.round((localDayStart(CHICAGO, 2017, 12, 31) - startMs) / 3_600_000);
  return bareSpec({
    ...{ startMs, count, depthM: DEPTH_M, layers: 30, tempC: 15, moistureWb, pressurePa: PRESSURE_PA },
    blower: { airM3M2S: AIR_M3_M2S },
  });
}

/** The bin in a year's weather. */
export function binIn(bare: RunSpec, air: Awaited<ReturnType<typeof ohareAir>>, year: number): RunSpec {
  const { spec, why } = yearSpec(bare, air, { zone: CHICAGO, tariff: null }, year);
  if (spec === null) throw new Error(why);
  return spec;
}
