import { groupedCount } from '../../base/grouped-count.ts';
import type { Zone } from '../../base/zone.ts';
import { backwardsRows } from './backwards.ts';
import { fileZone, isLocalStandard, rememberedZone } from './file-zone.ts';
import { resolveStamps } from './resolve-stamps.ts';
import { isDescending, rowsBySeries, type Stamps } from './stamps.ts';
import { keepsDaylightSaving, keepsStandardTime, type ZoneEvidence } from './standard-clock.ts';

/** What the clock of a file is found to be wrong about. */
export interface ClockFinding {
  /** rows of the file that are not believed because of it */
  rows: number[];
  /** UTC; null where none of its rows lies in the season */
  fromMs: number | null;
  toMs: number | null;
  text: string;
  advice: string;
}

export interface FileClock {
  /** instants, ms UTC, NaN where there is no stamp, [rows] */
  timeMs: Float64Array;
  /** 1 where the time is not believed, [rows] */
  clock: Uint8Array;
  findings: ClockFinding[];
}

/**
 * Turn a file's stamps into instants and say where its clock is not to be believed.
 *
 * @param path      for the texts
 * @param timeZone  the file's `time_zone`, null for the site's
 * @param siteZone  IANA name
 * @param ordered   the file is a log, written as time went on (tickets and hand samples are not: their order says nothing)
 * @param inSeason  which instants count in the texts; all else
 */
export function fileClock(
  path: string,
  stamps: Stamps,
  timeZone: string | null,
  siteZone: string,
  ordered: boolean,
  inSeason: (timeMs: number) => boolean = () => true,
): FileClock {
  const zone = fileZone(timeZone, siteZone);
  const bySeries = rowsBySeries(stamps);
  const descending = ordered && isDescending(stamps, bySeries);
  const resolved = resolveStamps(stamps, zone, descending);
  const findings: ClockFinding[] = [];
  const clock = Uint8Array.from(resolved.missingHour);
  if (ordered) {
    const evidence = isLocalStandard(timeZone)
      ? keepsDaylightSaving(stamps, rememberedZone(siteZone, false), bySeries, descending)
      : keepsStandardTime(stamps, resolved, bySeries, descending);
    if (evidence !== null) {
      const rows = [...resolved.missingHour.keys()].filter((row) => resolved.missingHour[row] === 1);
      const standard = rememberedZone(isLocalStandard(timeZone) ? siteZone : (timeZone ?? siteZone), true);
      const daylight = isLocalStandard(timeZone) ? rememberedZone(siteZone, false) : zone;
      const off = hourOff(stamps, resolved.timeMs, daylight, standard, inSeason);
      findings.push(zoneFinding(path, evidence, rows, timeZone ?? siteZone, off));
    }
    const wrong = bySeries.flatMap((rows) => wrongClock(rows, resolved.timeMs, clock, descending));
    if (wrong.length > 0) findings.push(backwardsFinding(path, wrong, resolved.timeMs));
    for (const row of wrong) clock[row] = 1;
  }
  return { timeMs: resolved.timeMs, clock, findings };
}

function wrongClock(rows: readonly number[], timeMs: Float64Array, clock: Uint8Array, descending: boolean): number[] {
  const good = rows.filter((row) => clock[row] === 0);
  if (descending) good.reverse();
  const times = good.map((row) => timeMs[row]);
  const wrong = backwardsRows(times);
  if (wrong.length === 0) return [];
  const off = new Set(wrong);
  const onLine = new Set(times.filter((_, i) => !off.has(i)));
  // The same moment again is a repeated row, which is told as that.
  return wrong.filter((i) => !onLine.has(times[i])).map((i) => good[i]);
}

const dayText = (ms: number) => new Date(ms).toISOString().slice(0, 10);

/** The local rows that stand under daylight saving time, and the span of all local rows. */
function hourOff(
  stamps: Stamps,
  timeMs: Float64Array,
  daylight: Zone,
  standard: Zone,
  inSeason: (timeMs: number) => boolean,
) {
  let rows = 0;
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < timeMs.length; row++) {
    if (stamps.local[row] === 0 || stamps.series[row] < 0) continue;
    const time = timeMs[row];
    if (!inSeason(time)) continue;
    if (daylight.offsetMs(time) !== standard.offsetMs(time)) rows += 1;
    fromMs = Math.min(fromMs, time);
    toMs = Math.max(toMs, time);
  }
  return { rows, fromMs, toMs };
}

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

function zoneFinding(
  path: string,
  evidence: ZoneEvidence,
  rows: number[],
  zoneName: string,
  off: { rows: number; fromMs: number; toMs: number },
): ClockFinding {
  const { days, missingHourRows, series } = evidence;
  const when = days.map(dayText).join(', ');
  const standard = evidence.kind === 'keeps standard time';
  const signs: string[] = [];
  if (missingHourRows > 0) {
    signs.push(
      `${counted(missingHourRows, 'row stands', 'rows stand')} in the hour that the clocks leave out in spring`,
    );
  }
  if (series > 0 && standard) {
    signs.push(`${counted(series, 'series runs', 'series run')} through the autumn change with its hour only once`);
  }
  if (!standard)
    signs.push(`${counted(series, 'series goes', 'series go')} back or forward an hour just where the clocks change`);
  const verdict = standard
    ? `the logger looks to keep standard time, but the file is read in ${zoneName}`
    : 'the logger looks to keep daylight saving time, but the file is declared local standard';
  return {
    rows,
    fromMs: Number.isFinite(off.fromMs) ? off.fromMs : null,
    toMs: Number.isFinite(off.toMs) ? off.toMs : null,
    text: `${path}: ${signs.join('; ')} (${when}): ${verdict}, so ${groupedCount(off.rows)} rows of its summer half stand an hour off.`,
    advice: standard
      ? 'Set time_zone: local standard for this file if the logger is not set forward in spring.'
      : 'Leave out time_zone: local standard for this file if the logger follows the change of the clocks.',
  };
}

function backwardsFinding(path: string, rows: number[], timeMs: Float64Array): ClockFinding {
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    fromMs = Math.min(fromMs, timeMs[row]);
    toMs = Math.max(toMs, timeMs[row]);
  }
  return {
    rows,
    fromMs,
    toMs,
    text: `${path}: the times of ${counted(rows.length, 'row runs', 'rows run')} against the order of their series or ${rows.length === 1 ? 'stands' : 'stand'} more than a year from the rest of it, so the logger's clock was wrong or was reset there.`,
    advice: 'Look at these rows in the file; correct their times, or leave them flagged.',
  };
}
