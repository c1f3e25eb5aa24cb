import { stationPressurePa } from '../../air/pressure.ts';
import type { Problem } from '../../base/errors.ts';
import { textLines } from './csv-records.ts';
import { type FileReading, isOutside } from './file-reading.ts';
import { shown } from './shown.ts';

const MISSING = '-9999';
/** Fixed positions, from 0, end exclusive (NOAA, ISD-Lite format document): tenths of degC, degC and hPa. */
const FIELDS = [
  { name: 'air temperature', from: 13, to: 19 },
  { name: 'dew point', from: 19, to: 25 },
  { name: 'sea-level pressure', from: 25, to: 31 },
] as const;
const STAMP = /^(\d{4}) (\d{2}) (\d{2}) (\d{2})(?=[ -]|$)/;

/**
 * NOAA ISD-Lite: one line an hour, UTC, fixed width, -9999 missing. Pressure is that at sea level: it becomes station pressure with the
 * site's elevation, and stays missing without it.
 *
 * @source NOAA National Centers for Environmental Information, ISD-Lite format document
 */
export function readIsdLite(reading: FileReading): Problem[] {
  const { tally, path } = reading;
  const elevationM = reading.season.site.elevationM;
  const lines = textLines(reading.text);
  let placed = 0;
  let withoutElevation = 0;
  lines.forEach((text, i) => {
    if (text.trim() === '') return;
    tally.rows += 1;
    const timeMs = hourOf(text);
    if (typeof timeMs === 'string') {
      tally.rejectRow(i + 1, FIELDS.length, text, timeMs);
      return;
    }
    placed += 1;
    if (isOutside(reading, timeMs)) tally.outside += FIELDS.length;
    else withoutElevation += addHour(reading, text, i + 1, timeMs, elevationM);
  });
  if (placed === 0) return [notIsdLite(path, lines)];
  if (withoutElevation > 0) {
    reading.findings.push({
      kind: 'gap',
      where: path,
      binId: null,
      fromMs: tally.firstMs,
      toMs: tally.lastMs,
      cells: withoutElevation,
      text: `${path}: ${withoutElevation} sea-level pressures are left out, because season.yaml does not tell the elevation of the site.`,
      advice: 'Add elevation to site.',
    });
  }
  return [];
}

function hourOf(text: string): number | string {
  if (text.length < 31) return 'is shorter than an ISD-Lite line';
  const match = STAMP.exec(text);
  if (match === null) return 'does not begin with year, month, day and hour';
  const [year, month, day, hour] = match.slice(1).map(Number);
  const ms = Date.UTC(year, month - 1, day, hour);
  const date = new Date(ms);
  const exists =
    date.getUTCMonth() === month - 1 && date.getUTCDate() === day && hour < 24 && year >= 1900 && year < 2200;
  return exists ? ms : 'names a day or hour that does not exist';
}

/** @returns 1 where a pressure could not be used for want of an elevation */
function addHour(reading: FileReading, text: string, line: number, timeMs: number, elevationM: number | null): number {
  const { table, tally, spec, path } = reading;
  const at = table.addRow();
  table.setNumber('time', at, timeMs);
  table.setText('role', at, spec.role);
  table.setText('file', at, path);
  tally.keptRow(timeMs);
  let unused = 0;
  let tempC = Number.NaN;
  for (const { name, from, to } of FIELDS) {
    const cell = text.slice(from, to).trim();
    if (cell === MISSING || cell === '') tally.missing += 1;
    else if (!/^-?\d+$/.test(cell)) tally.rejectCell(line, name, cell, 'is no whole number');
    else if (name === 'sea-level pressure' && elevationM === null) {
      unused = 1;
      tally.missing += 1;
    } else {
      tally.kept += 1;
      table.keepCell(at);
      const value = Number(cell) / 10;
      if (name === 'air temperature') {
        tempC = value;
        table.setNumber('temp_c', at, value);
      } else if (name === 'dew point') table.setNumber('dew_point_c', at, value);
      else table.setNumber('pressure_pa', at, stationPressurePa(value * 100, elevationM!, tempC));
    }
  }
  return unused;
}

function notIsdLite(path: string, lines: readonly string[]): Problem {
  const message = `has no line of the form of ISD-Lite (year month day hour, then numbers at fixed places); its first line is ${shown(lines[0])}. Correct format in season.yaml.`;
  return { code: 'FILE_FORMAT', file: path, line: 1, message };
}
