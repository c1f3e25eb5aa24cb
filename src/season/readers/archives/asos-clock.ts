import type { Problem } from '../../../base/errors.ts';
import { type ClockFinding, fileClock } from '../../clock/file-clock.ts';
import { isLocalStandard } from '../../clock/file-zone.ts';
import { stampParser } from '../../clock/stamp-parser.ts';
import type { Stamps } from '../../clock/stamps.ts';
import { isZone } from '../../yaml/zone-name.ts';
import { type FileReading, isOutside } from '../file-reading.ts';
import type { ArchiveCsv } from './archive-csv.ts';

/** Headers of the time, first the ones to prefer: where local time and UTC stand side by side, UTC leaves no doubt. */
const TIMES = ['utc_valid', 'valid', 'time_hour', 'local_valid'].map(
  (name) => new RegExp(`^${name}(?:\\s*\\((.+)\\))?$`),
);

/** The column of the time; -1 for none. @param names  headers in small letters */
export function timeColumn(names: readonly string[]): number {
  const known = TIMES.find((one) => names.some((name) => one.test(name)));
  return known === undefined ? -1 : names.findIndex((name) => known.test(name));
}

/** When the rows of a file were observed. */
export interface AsosClock {
  /** ms UTC; NaN where there is a reason, [rows] */
  timeMs: Float64Array;
  /** 1 where the time is not believed, [rows] */
  wrong: Uint8Array;
  /** rows whose time cannot be read, with why */
  reasons: Map<number, string>;
  findings: ClockFinding[];
}

/**
 * Instants of a file's rows: by their own offset, else UTC where the column says so, else by `time_zone`, else by the zone that the time's header or the
 * file's notes name, else the site's where the column says that it is local, else UTC.
 */
export function asosClock(reading: FileReading, csv: ArchiveCsv, time: number): AsosClock | Problem {
  const { path, season } = reading;
  const zone = zoneOfFile(reading, csv.headers[time]);
  if (!isZone(zone) && !isLocalStandard(zone)) {
    const message = `says the time zone "${zone}", which is not known. Give time_zone for the file, e.g. UTC.`;
    return { code: 'FILE_FORMAT', file: path, line: 1, message };
  }
  const { stamps, reasons } = stampsOf(csv, time);
  const inSeason = (timeMs: number) => !isOutside(reading, timeMs);
  const { timeMs, clock, findings } = fileClock(path, stamps, zone, season.site.timeZone, true, inSeason);
  return { timeMs, wrong: clock, reasons, findings };
}

function zoneOfFile({ text, spec, season }: FileReading, header: string): string {
  const name = header.toLowerCase();
  if (name.startsWith('utc')) return 'UTC';
  const inHeader = /\((.+)\)$/.exec(header)?.[1];
  const inNotes = /^#.*\btime ?zone\b[^A-Za-z\n]*([A-Za-z_]+(?:\/[\w+\-/]+)?)/im.exec(text)?.[1];
  const silent = name.startsWith('local') ? season.site.timeZone : 'UTC';
  const said = (spec.timeZone ?? inHeader ?? inNotes ?? silent).trim();
  return /^(?:GMT|Z|Zulu)$/i.test(said) ? 'UTC' : said;
}

function stampsOf({ rows, cutOff }: ArchiveCsv, time: number) {
  const parse = stampParser(null, true);
  const stamps: Stamps = {
    ms: new Float64Array(rows.length).fill(Number.NaN),
    local: new Uint8Array(rows.length),
    series: new Int32Array(rows.length).fill(-1),
  };
  const reasons = new Map<number, string>();
  rows.forEach((fields, row) => {
    if (cutOff !== null && row === rows.length - 1) {
      reasons.set(row, cutOff);
      return;
    }
    const stamp = parse(fields[time] ?? '');
    if (typeof stamp === 'string') {
      reasons.set(row, `has a time that ${stamp}`);
      return;
    }
    stamps.ms[row] = stamp.ms;
    stamps.local[row] = stamp.kind === 'local' ? 1 : 0;
    stamps.series[row] = 0;
  });
  return { stamps, reasons };
}

/** Say what the clock is found to be wrong about. */
export function tellClock(
  { path, findings, table }: FileReading,
  { findings: found }: AsosClock,
  atOf: ReadonlyMap<number, number>,
): void {
  for (const { rows, fromMs, toMs, text, advice } of found) {
    const cells = rows.reduce((sum, row) => sum + (atOf.has(row) ? table.cellsOf(atOf.get(row)!) : 0), 0);
    findings.push({ kind: 'clock', where: path, binId: null, fromMs, toMs, cells, text, advice });
  }
}
