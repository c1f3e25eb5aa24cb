import { instantsOf, type Zone } from '../../base/zone.ts';
import type { Resolved } from './resolve-stamps.ts';
import { type Stamps, usualStepMs } from './stamps.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Why a file read with daylight saving looks like one kept on standard time, or the reverse. */
export interface ZoneEvidence {
  kind: 'keeps standard time' | 'keeps daylight saving';
  /** rows that stand in spring's missing hour */
  missingHourRows: number;
  /** series that are steady across an autumn change and show its hour once (or, for the reverse, twice) */
  series: number;
  /** local calendar days of the changes, as ms of their midnight in UTC fields */
  days: number[];
}

/** A logger on standard time in a file read with daylight saving: stamps in the missing hour, or the repeated hour shown only once by a steady log. */
export function keepsStandardTime(
  stamps: Stamps,
  resolved: Resolved,
  bySeries: readonly number[][],
  descending: boolean,
): ZoneEvidence | null {
  const days = new Set<number>();
  let missingHourRows = 0;
  for (let row = 0; row < resolved.missingHour.length; row++) {
    if (resolved.missingHour[row] === 0 || stamps.series[row] < 0) continue;
    missingHourRows += 1;
    days.add(Math.floor(stamps.ms[row] / DAY_MS) * DAY_MS);
  }
  let series = 0;
  for (const [day, ambiguous] of resolved.repeated) {
    const once = new Set(ambiguous.map((one) => stamps.series[one.row]));
    for (const code of once) {
      if (!shownOnce(stamps, bySeries[code], day * DAY_MS, descending)) continue;
      series += 1;
      days.add(day * DAY_MS);
    }
  }
  if (missingHourRows === 0 && series === 0) return null;
  return { kind: 'keeps standard time', missingHourRows, series, days: [...days].sort((a, b) => a - b) };
}

/** Whether the wall clock of a steady series (hourly or finer) runs through the day of the change without a step back, a repeat or a hole. */
function shownOnce(stamps: Stamps, rows: readonly number[], dayMs: number, descending: boolean): boolean {
  const near = rows.filter(
    (row) => stamps.local[row] === 1 && stamps.ms[row] >= dayMs - 6 * HOUR_MS && stamps.ms[row] < dayMs + 12 * HOUR_MS,
  );
  const walls = near.map((row) => stamps.ms[row]);
  if (descending) walls.reverse();
  const step = usualStepMs(walls);
  if (!(step <= HOUR_MS)) return false;
  // Both sides of the hour must be there, or a log that begins or ends in it would look like one.
  if (!(walls[0] <= dayMs - 2 * step && walls[walls.length - 1] >= dayMs + 6 * HOUR_MS)) return false;
  return walls.every((wall, i) => i === 0 || (wall - walls[i - 1] > 0 && wall - walls[i - 1] <= 1.5 * step));
}

/**
 * A logger on daylight saving time in a file declared `local standard`: its wall clock goes back within autumn's repeated hour, or
 * leaves out exactly spring's hour in a steady log.
 *
 * @param daylight  the site's zone with daylight saving
 */
export function keepsDaylightSaving(
  stamps: Stamps,
  daylight: Zone,
  bySeries: readonly number[][],
  descending: boolean,
): ZoneEvidence | null {
  const days = new Set<number>();
  let series = 0;
  for (const rows of bySeries) {
    const walls = rows.filter((row) => stamps.local[row] === 1).map((row) => stamps.ms[row]);
    if (descending) walls.reverse();
    const found = changesSeen(walls, daylight);
    if (found.length > 0) series += 1;
    for (const day of found) days.add(day);
  }
  if (series === 0) return null;
  return { kind: 'keeps daylight saving', missingHourRows: 0, series, days: [...days].sort((a, b) => a - b) };
}

function changesSeen(walls: readonly number[], daylight: Zone): number[] {
  const step = usualStepMs(walls);
  // Where every row stands twice, a repeat in the repeated hour says nothing.
  const repeats = walls.filter((wall, i) => i > 0 && wall === walls[i - 1]).length;
  const out: number[] = [];
  for (let i = 1; i < walls.length; i++) {
    const moved = walls[i] - walls[i - 1];
    const turn = daylight.offsetMs(walls[i] + DAY_MS) - daylight.offsetMs(walls[i] - DAY_MS);
    if (turn === 0) continue;
    const back = moved <= 0 && moved > -HOUR_MS && (moved < 0 || repeats <= 2);
    const repeated = back && instantsOf(daylight, walls[i]).length > 1 && instantsOf(daylight, walls[i - 1]).length > 1;
    const skipped =
      step <= HOUR_MS &&
      Math.abs(moved - HOUR_MS - step) < 0.1 * step &&
      instantsOf(daylight, walls[i - 1] + step).length === 0 &&
      instantsOf(daylight, walls[i]).length > 0;
    if (repeated || skipped) out.push(Math.floor(walls[i] / DAY_MS) * DAY_MS);
  }
  return out;
}
