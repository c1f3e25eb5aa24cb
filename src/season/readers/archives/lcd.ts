import type { Problem } from '../../../base/errors.ts';
import { linearUnit } from '../../../base/units.ts';
import { FLAGS } from '../../../tables/flags.ts';
import { fileZone } from '../../clock/file-zone.ts';
import { isoStamp } from '../../clock/iso-stamp.ts';
import type { FileReading } from '../file-reading.ts';
import { type ArchiveCsv, archiveCsv, lacksColumn, NO_HUMIDITY, noRowPlaced, severalStations } from './archive-csv.ts';
import { type ArchiveCell, addArchiveRow } from './archive-row.ts';
import { flagExtraReports, type Report } from './hourly-reports.ts';
import { lcdOffsetMs } from './lcd-offset.ts';
import { type LcdUnits, lcdUnits } from './lcd-units.ts';

/** Columns of the hourly reports and their units in either system (NOAA, LCD documentation, versions 1 and 2; from memory). */
const FIELDS = [
  { column: 'temp_c', header: 'HourlyDryBulbTemperature', kind: 'temperature', us: 'degF', si: 'degC' },
  { column: 'dew_point_c', header: 'HourlyDewPointTemperature', kind: 'temperature', us: 'degF', si: 'degC' },
  { column: 'rh', header: 'HourlyRelativeHumidity', kind: 'fraction', us: '%', si: '%' },
  { column: 'pressure_pa', header: 'HourlyStationPressure', kind: 'pressure', us: 'inHg', si: 'hPa' },
] as const;
const PRESSURES = ['HourlyStationPressure', 'HourlySeaLevelPressure', 'HourlyAltimeterSetting'];
/** A number, and marks behind it: `s` suspect, `*` estimated or erroneous, `V` variable. */
const CELL = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*([sTV*]{0,2})$/i;
/** Blank; missing; a trace, where no number is; a mark with no number before it. */
const MISSING = /^(?:|M|T|[*]|s|V|VRB)$/;

/** FM-15 and the like are the routine reports; FM-12 repeats them at synoptic hours, FM-16 is sent when the weather changes. */
const rankOf = (type: string) => (type === 'FM-16' ? 2 : type === 'FM-12' ? 1 : 0);
/** Summaries of the day and month, which hold no reading of an hour. */
const isSummary = (type: string) => /^SO[DM]$/.test(type);

/**
 * NOAA Local Climatological Data, version 1 and 2, as CSV: the hourly reports. Local standard time all the year; the METAR text of the
 * reports tells it, else the site's zone. Reports are instants and stay so.
 *
 * @source NOAA National Centers for Environmental Information, Local Climatological Data documentation (from memory)
 */
export function readLcd(reading: FileReading): Problem[] {
  const { path, tally, season } = reading;
  const csv = archiveCsv(path, reading.text, 'LCD');
  if ('code' in csv) return [csv];
  // Two columns of version 1 stand twice; the first of them is meant.
  const at = (header: string) => csv.headers.indexOf(header);
  const problem = lacking(path, csv.headers) ?? severalStations(path, csv.rows, at('STATION'));
  if (problem !== null) return [problem];
  if (csv.rows.length === 0) {
    return [
      { code: 'FILE_EMPTY', file: path, line: 1, message: 'has a header and not one row below it. Download it again.' },
    ];
  }
  const [date, type, remarks] = [at('DATE'), at('REPORT_TYPE'), at('REM')];
  const typeOf = (row: number) => (csv.rows[row][type] ?? '').trim();
  const units = lcdUnits(samples(csv));
  if (units === null) {
    const message =
      'does not tell whether its temperatures are in °F or °C: it has no pressures, and no row with temperature, dew point and humidity. Download it with all hourly columns.';
    return [{ code: 'FILE_UNIT', file: path, line: 1, message }];
  }
  const local = csv.rows.map((row) => {
    const stamp = isoStamp((row[date] ?? '').trim());
    return stamp === null || stamp.dateOnly ? null : stamp;
  });
  const own = lcdOffsetMs(remarked(csv, local, remarks));
  const zone = fileZone('local standard', season.site.timeZone);
  const cellsOf = reader(units, at);
  const reports: Report[] = [];
  const suspect = { rows: 0, cells: 0, fromMs: Number.POSITIVE_INFINITY, toMs: Number.NEGATIVE_INFINITY };
  let firstBad = -1;
  let placed = 0;
  csv.rows.forEach((fields, row) => {
    tally.rows += 1;
    if (isSummary(typeOf(row))) return;
    const stamp = local[row];
    const cut = row === csv.rows.length - 1 ? csv.cutOff : null;
    if (cut !== null || stamp === null || fields.length <= at(FIELDS[0].header)) {
      if (firstBad < 0) firstBad = row;
      const reason = cut ?? 'has no time of the form 2023-01-01T00:54:00';
      tally.rejectRow(csv.lines[row], FIELDS.length, csv.textOf(row), reason);
      return;
    }
    placed += 1;
    const timeMs = stamp.kind === 'instant' ? stamp.ms : stamp.ms - (own ?? zone.offsetMs(stamp.ms));
    let hasTemperature = false;
    let marked = false;
    const added = addArchiveRow(reading, csv.lines[row], timeMs, FIELDS.length, () => {
      const cells = cellsOf(fields);
      hasTemperature = typeof cells[0].value === 'number';
      marked = cells.some((cell) => cell.suspect && cell.column !== 'pressure_pa');
      return cells;
    });
    if (added < 0) return;
    if (marked) {
      reading.table.addFlag('flags', added, FLAGS.spike);
      suspect.rows += 1;
      suspect.cells += reading.table.cellsOf(added);
      suspect.fromMs = Math.min(suspect.fromMs, timeMs);
      suspect.toMs = Math.max(suspect.toMs, timeMs);
    }
    if (hasTemperature) reports.push({ timeMs, rank: rankOf(typeOf(row)) + (marked ? 3 : 0), at: added });
  });
  if (placed === 0) {
    if (firstBad >= 0) {
      return [noRowPlaced(path, csv.lines[firstBad], csv.rows.length, 'has no time', csv.textOf(firstBad))];
    }
    return [
      {
        code: 'FILE_EMPTY',
        file: path,
        line: 1,
        message: 'holds summaries of days and months only, and no hourly report.',
      },
    ];
  }
  flagExtraReports(reading, reports);
  if (suspect.rows > 0) reading.findings.push(suspectFinding(path, suspect));
  if (own !== null) tellOffset(reading, own, zone.offsetMs(tally.firstMs ?? 0));
  return [];
}

type LcdCell = ArchiveCell & { suspect: boolean };

function reader(units: LcdUnits, at: (header: string) => number) {
  const columns = FIELDS.map((field) => ({
    column: field.column,
    header: field.header,
    index: at(field.header),
    line: linearUnit(field.kind, field[units])!,
  }));
  return (fields: readonly string[]): LcdCell[] =>
    columns.map(({ column, header, index, line }) => {
      const text = index < 0 ? '' : (fields[index] ?? '').trim();
      const cell = (value: ArchiveCell['value'], suspect = false) => ({ column, header, text, value, suspect });
      if (MISSING.test(text)) return cell(null);
      const match = CELL.exec(text);
      if (match === null) return cell('is no number');
      return cell(Number(match[1]) * line.scale + line.offset, /[s*]/i.test(match[2]));
    });
}

function lacking(path: string, headers: readonly string[]): Problem | null {
  const way = 'Download hourly observations of LCD, or correct format in season.yaml.';
  for (const header of ['DATE', 'REPORT_TYPE', 'HourlyDryBulbTemperature']) {
    if (!headers.includes(header)) return lacksColumn(path, 1, `column "${header}"`, headers, way);
  }
  if (headers.includes('HourlyRelativeHumidity') || headers.includes('HourlyDewPointTemperature')) return null;
  return lacksColumn(path, 1, 'humidity (HourlyRelativeHumidity or HourlyDewPointTemperature)', headers, NO_HUMIDITY);
}

function* samples(csv: ArchiveCsv) {
  const columns = [...FIELDS.slice(0, 3).map((field) => field.header), ...PRESSURES].map((name) =>
    csv.headers.indexOf(name),
  );
  for (const row of csv.rows) {
    const numbers = columns.map((index) => Number(CELL.exec((row[index] ?? '').trim())?.[1] ?? Number.NaN));
    const [temperature, dewPoint, humidity, ...pressures] = numbers;
    const pressure = pressures.find((one) => !Number.isNaN(one)) ?? Number.NaN;
    // Summaries and empty reports say nothing.
    if (Number.isNaN(temperature) && Number.isNaN(pressure)) continue;
    yield { temperature, dewPoint, humidity, pressure };
  }
}

function* remarked(csv: ArchiveCsv, local: readonly ({ kind: string; ms: number } | null)[], index: number) {
  if (index < 0) return;
  for (const [row, stamp] of local.entries()) {
    if (stamp?.kind === 'local') yield { localMs: stamp.ms, remarks: csv.rows[row][index] ?? '' };
  }
}

function suspectFinding(path: string, found: { rows: number; cells: number; fromMs: number; toMs: number }) {
  return {
    kind: 'spike' as const,
    where: path,
    binId: null,
    fromMs: found.fromMs,
    toMs: found.toMs,
    cells: found.cells,
    text: `${path}: ${found.rows} reports carry the archive's own mark of a suspect value and are left out.`,
    advice: null,
  };
}

/** A station in another zone than the site is read by its own clock, and that is said. */
function tellOffset({ path, findings, tally, season }: FileReading, ownMs: number, siteMs: number): void {
  if (ownMs === siteMs) return;
  const hours = (ms: number) => `UTC${ms < 0 ? '-' : '+'}${Math.abs(ms) / 3_600_000}`;
  findings.push({
    kind: 'clock',
    where: path,
    binId: null,
    fromMs: tally.firstMs,
    toMs: tally.lastMs,
    cells: 0,
    text: `${path}: its reports keep ${hours(ownMs)}, while the standard time of the site (${season.site.timeZone}) is ${hours(siteMs)}. They are read by their own.`,
    advice: 'Nothing, if the station lies in the next zone; else see whether it is the right station.',
  });
}
