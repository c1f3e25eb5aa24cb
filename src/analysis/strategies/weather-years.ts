import { firstNotBefore } from '../../base/first-not-before.ts';
import { groupedCount } from '../../base/grouped-count.ts';
import { localDayStart, toLocalMs, type Zone } from '../../base/zone.ts';
import type { Tariff } from '../../money/tariff.ts';
import type { LevelStep, RunSpec } from '../../simulation/run/run-spec.ts';
import { hoursOfTariff } from '../model/hours-of-tariff.ts';
import { carryDate, localYear } from './carry-date.ts';
import { BRIDGED_H, hourlyAir, USUAL_H } from './hourly-air.ts';
import type { OutdoorAir } from './outdoor-air.ts';
import { airOfRun } from './typical-year.ts';

const HOUR_MS = 3_600_000;
/** A year with fewer of its hours from readings at the usual pace is left out. Our choice. */
export const LEAST_SHARE = 0.95;

/** A bin's season in another year's weather, or a sentence why that year cannot carry it. */
export type YearSpec = { year: number; spec: RunSpec; why: null } | { year: number; spec: null; why: string };

/** Where and at what price a bin stands. */
export interface YearSite {
  zone: Zone;
  /** null: no price is known */
  tariff: Tariff | null;
}

/** First and last instant of a bin's season carried to another year, ms UTC; see `yearSpec`. */
export function yearStretch({ hours, endHour }: RunSpec, zone: Zone, year: number, moveDays = 0) {
  const years = year - localYear(zone, hours.startMs);
  return {
    startMs: moveDate(zone, carryDate(zone, hours.startMs, years), moveDays),
    endMs: carryDate(zone, hours.startMs + endHour * HOUR_MS, years),
  };
}

/**
 * Carry a bin's season to another year: the same local dates and times for its start, filling, end and levels, that year's
 * weather, leap day, clock and weekdays. The grain comes in as it did.
 *
 * @param spec      of the season
 * @param year      local calendar year in which the run begins
 * @param moveDays  begin and fill so many days later (earlier below 0); the end keeps its date
 */
export function yearSpec(
  spec: RunSpec,
  air: OutdoorAir,
  { zone, tariff }: YearSite,
  year: number,
  moveDays = 0,
): YearSpec {
  const { hours, fromHour = 0 } = spec;
  const years = year - localYear(zone, hours.startMs);
  const carried = (hour: number) => carryDate(zone, hours.startMs + hour * HOUR_MS, years);
  const movedMs = (ms: number) => moveDate(zone, ms, moveDays);
  const { startMs, endMs } = yearStretch(spec, zone, year, moveDays);
  const hourOf = (ms: number) => Math.round((ms - startMs) / HOUR_MS);
  const count = hourOf(endMs);
  const startHour = hourOf(movedMs(carried(fromHour)));
  if (!(count > startHour)) return { year, spec: null, why: 'The run would end before the bin is filled.' };
  const weather = hourlyAir(airOfRun(air, startMs, endMs), startMs, count, hours.pressurePa);
  const why = lackOf(weather, count, zone);
  if (why !== null) return { year, spec: null, why };
  const { tempC, rh, humidityRatio } = weather;
  return {
    year,
    why: null,
    spec: {
      ...spec,
      hours: {
        startMs,
        pressurePa: hours.pressurePa,
        tempC,
        rh,
        humidityRatio,
        ...hoursOfTariff(tariff, zone, startMs, count),
      },
      levels: inOrder(
        spec.levels.map((level) => ({
          ...level,
          // Grain taken out is taken out on its date; only what comes in moves.
          hour: hourOf(level.hour <= fromHour ? movedMs(carried(level.hour)) : carried(level.hour)),
        })),
      ),
      ...(spec.fromHour === undefined ? {} : { fromHour: startHour }),
      endHour: count,
    },
  };
}

/** So many local days later at the same local time. */
function moveDate(zone: Zone, ms: number, days: number): number {
  const shifted = ms + days * 24 * HOUR_MS;
  return shifted + zone.offsetMs(ms) - zone.offsetMs(shifted);
}

/** 29 February carried to the 28th, or a shifted clock, may bring two levels out of order: then they come at once. */
function inOrder(levels: LevelStep[]): LevelStep[] {
  let latest = 0;
  return levels.map((level) => {
    latest = Math.max(latest, level.hour);
    return { ...level, hour: latest };
  });
}

function lackOf(
  { bridged, lacking, longestGapH, longestGapFromMs }: ReturnType<typeof hourlyAir>,
  count: number,
  zone: Zone,
): string | null {
  if (lacking === count) return 'No weather is on file for it.';
  const day = new Date(toLocalMs(zone, longestGapFromMs)).toISOString().slice(0, 10);
  if (lacking > 0)
    return `Its weather has a gap of ${groupedCount(longestGapH)} hours from ${day} on; ${BRIDGED_H} hours can be bridged, ${groupedCount(lacking)} of ${groupedCount(count)} hours are lacking.`;
  const share = 1 - bridged / count;
  if (share < LEAST_SHARE)
    return `Only ${(100 * share).toFixed(1)} % of its hours lie between readings at most ${USUAL_H} hours apart; ${100 * LEAST_SHARE} % are due.`;
  return null;
}

/** A file of a year by UTC reaches this far into the local year before or after it, at most: the zones' largest offset. */
const SPILL_MS = 14 * HOUR_MS;

/**
 * Years of which the weather on file tells anything of their own dates from `fromMs` to `toMs` (ms UTC, of the season): what is
 * lacking is told. Neither the months after New Year alone, nor the hours that another year's file by UTC reaches over, are a year's own.
 */
export function yearsOnFile(fromMs: number, toMs: number, { timeMs, typical }: OutdoorAir, zone: Zone): number[] {
  if (timeMs.length === 0) return [];
  const own = localYear(zone, fromMs);
  const first = localYear(zone, timeMs[0]) - 1;
  const last = localYear(zone, timeMs[timeMs.length - 1]);
  const found: number[] = [];
  for (let year = first; year <= last; year++) {
    const startMs = carryDate(zone, fromMs, year - own);
    const endMs = Math.min(carryDate(zone, toMs, year - own), localDayStart(zone, year + 1, 1, 1));
    const from = firstNotBefore(timeMs, startMs);
    const to = firstNotBefore(timeMs, endMs);
    // But a typical year is that of its own months: none begins before it.
    const before = typical.some((one) => startMs < one.fromMs && timeMs[from] >= one.fromMs && timeMs[from] < one.toMs);
    // A run that begins within hours of New Year has no more of its own.
    const least = Math.min(SPILL_MS, (endMs - startMs) / 2);
    if (!before && from < to && timeMs[to - 1] - timeMs[from] >= least) found.push(year);
  }
  return found;
}
