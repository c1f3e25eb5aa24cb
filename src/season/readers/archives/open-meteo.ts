import type { Problem } from '../../../base/errors.ts';
import { linearUnit, type UnitKind, unitsOf } from '../../../base/units.ts';
import { isoStamp } from '../../clock/iso-stamp.ts';
import { nameAndUnit } from '../../implied-unit.ts';
import { textLines } from '../csv-records.ts';
import { cutOff } from '../cut-off.ts';
import type { FileReading } from '../file-reading.ts';
import { shown } from '../shown.ts';
import { formatProblem, lacksColumn, NO_HUMIDITY, noRowPlaced } from './archive-csv.ts';
import { type ArchiveCell, addArchiveRow } from './archive-row.ts';
import { blocksOf, type OpenMeteoBlock } from './open-meteo-blocks.ts';
import { plainNumber } from './plain-number.ts';
import { SeaLevel } from './sea-level.ts';

/** Variables that are read, the ones to prefer first, in today's and earlier spelling (Open-Meteo API documentation; from memory). */
const NAMES: readonly (readonly [ArchiveCell['column'], UnitKind, string])[] = [
  ['temp_c', 'temperature', 'temperature_2m'],
  ['dew_point_c', 'temperature', 'dew_point_2m'],
  ['dew_point_c', 'temperature', 'dewpoint_2m'],
  ['rh', 'fraction', 'relative_humidity_2m'],
  ['rh', 'fraction', 'relativehumidity_2m'],
  ['pressure_pa', 'pressure', 'surface_pressure'],
  ['pressure_pa', 'pressure', 'pressure_msl'],
];
const ORDER = ['temp_c', 'dew_point_c', 'rh', 'pressure_pa'] as const;
const MISSING = /^(?:|nan|null|NA)$/i;

interface Found {
  column: ArchiveCell['column'];
  name: string;
  header: string;
  index: number;
  scale: number;
  offset: number;
}

/**
 * Open-Meteo CSV: a block that tells the place and its offset from UTC, then a block of hours with units in the headers. Stamps are local by the
 * one offset that the place's block names, without daylight saving, or seconds since 1970. Values are instants.
 *
 * @source Open-Meteo API documentation (from memory)
 */
export function readOpenMeteo(reading: FileReading): Problem[] {
  const { path, tally, season } = reading;
  const lines = textLines(reading.text);
  const blocks = blocksOf(lines);
  const places = blocks.filter((block) => indexOf(block.fields[0], 'utc_offset_seconds') >= 0);
  const [place] = places;
  if (place === undefined || place.fields.length < 2) {
    const what = `does not begin with the place of an Open-Meteo file (latitude, longitude, elevation, utc_offset_seconds); its first line is ${shown(lines[0])}`;
    return [formatProblem(path, 1, what)];
  }
  if (place.fields.length > 2) {
    const message = `holds ${place.fields.length - 1} places, and the farm has one weather. Export the nearest alone.`;
    return [{ code: 'FILE_FORMAT', file: path, line: place.lines[2] + 1, message }];
  }
  if (places.length > 1) {
    const message =
      'holds several downloads, one below the other. Save each in a file of its own; path in season.yaml may be a pattern that names them all.';
    return [{ code: 'FILE_FORMAT', file: path, line: places[1].lines[0] + 1, message }];
  }
  const told = (key: string) => plainNumber((place.fields[1][indexOf(place.fields[0], key)] ?? '').trim());
  const offsetMs = told('utc_offset_seconds') * 1000;
  if (Number.isNaN(offsetMs)) {
    return [formatProblem(path, place.lines[1] + 1, 'has no number under utc_offset_seconds, which its times hang on')];
  }
  const named = blocks.filter((block) => indexOf(block.fields[0], 'time') >= 0);
  const hours = hoursOf(named);
  const shownBlock = hours ?? named[0] ?? place;
  const headers = shownBlock.fields[0].map((header) => header.trim());
  const line = shownBlock.lines[0] + 1;
  const way = 'Export hourly data, or read it as plain CSV with columns.';
  if (hours === undefined) return [lacksColumn(path, line, 'block of hours (a column "temperature_2m")', headers, way)];
  const units = unitsRow(hours);
  const columns = columnsOf(path, line, headers, units);
  if (!Array.isArray(columns)) return [columns];
  const has = (column: string) => columns.some((one) => one.column === column);
  if (!has('temp_c')) return [lacksColumn(path, line, 'air temperature (a column "temperature_2m")', headers, way)];
  if (!has('rh') && !has('dew_point_c')) {
    const what = 'humidity (relative_humidity_2m or dew_point_2m)';
    return [lacksColumn(path, line, what, headers, NO_HUMIDITY)];
  }
  const siteElevation = season.site.elevationM ?? told('elevation');
  const seaLevel = new SeaLevel(Number.isNaN(siteElevation) ? null : siteElevation);
  const time = indexOf(hours.fields[0], 'time');
  let placed = 0;
  hours.fields.forEach((fields, i) => {
    if (i === 0 || fields === units) return;
    tally.rows += 1;
    const at = hours.lines[i];
    const timeMs = timeOf((fields[time] ?? '').trim(), offsetMs);
    const cut = at === lines.length - 1 ? cutOff(reading.text, fields.length, headers.length) : null;
    if (timeMs === null || cut !== null) {
      tally.rejectRow(at + 1, columns.length, lines[at], cut ?? 'has no time of the form 2024-10-04T13:00');
      return;
    }
    placed += 1;
    addArchiveRow(reading, at + 1, timeMs, columns.length, () => cellsOf(fields, columns, seaLevel));
  });
  if (tally.rows === 0) {
    const message = 'has a header and not one hour below it. Export it again.';
    return [{ code: 'FILE_EMPTY', file: path, line, message }];
  }
  if (placed === 0) return [noRowPlaced(path, line + 1, tally.rows, 'has no time', lines[line])];
  seaLevel.tell(reading);
  return [];
}

const indexOf = (headers: readonly string[], name: string) => headers.findIndex((header) => header.trim() === name);

/** The block of the hours: of those with a variable that is read the longest, since one of the present moment or of the days may stand beside it. */
function hoursOf(named: readonly OpenMeteoBlock[]): OpenMeteoBlock | undefined {
  const known = new Set(NAMES.map(([, , name]) => name));
  return named
    .filter(({ fields }) => fields[0].some((header) => known.has(nameAndUnit(header).name)))
    .sort((a, b) => b.fields.length - a.fields.length)[0];
}

/** A row of units below a header that has none, as other programs write it; null where there is none. */
function unitsRow({ fields: [headers, first] }: OpenMeteoBlock): string[] | null {
  if (first === undefined || headers.some((header) => nameAndUnit(header).unit !== null)) return null;
  const isUnit = NAMES.some(([, kind, name]) => {
    const index = indexOf(headers, name);
    return index >= 0 && linearUnit(kind, (first[index] ?? '').trim()) !== null;
  });
  return isUnit && timeOf((first[indexOf(headers, 'time')] ?? '').trim(), 0) === null ? first : null;
}

function columnsOf(
  path: string,
  line: number,
  headers: readonly string[],
  units: readonly string[] | null,
): Found[] | Problem {
  const found: Found[] = [];
  for (const wanted of ORDER) {
    for (const [column, kind, name] of NAMES) {
      const index = headers.findIndex((header) => nameAndUnit(header).name === name);
      if (column !== wanted || index < 0 || found.some((one) => one.column === column)) continue;
      const unit = nameAndUnit(headers[index]).unit ?? units?.[index]?.trim() ?? null;
      const linear = unit === null ? null : linearUnit(kind, unit);
      if (linear === null) {
        const what = unit === null ? 'does not name the unit of' : `has a unit that is not known, ${shown(unit)}, for`;
        const message = `${what} ${name}; its header is ${shown(headers[index])}, allowed are ${unitsOf(kind).join(', ')}. Export it again with units.`;
        return { code: 'FILE_UNIT', file: path, line, message };
      }
      found.push({ column, name, header: headers[index], index, ...linear });
    }
  }
  return found;
}

function timeOf(text: string, offsetMs: number): number | null {
  if (/^-?\d{9,10}$/.test(text)) return Number(text) * 1000;
  const stamp = isoStamp(text);
  if (stamp === null || stamp.dateOnly) return null;
  return stamp.kind === 'instant' ? stamp.ms : stamp.ms - offsetMs;
}

function cellsOf(fields: readonly string[], columns: readonly Found[], seaLevel: SeaLevel): ArchiveCell[] {
  let tempC = Number.NaN;
  return columns.map(({ column, name, header, index, scale, offset }) => {
    const text = (fields[index] ?? '').trim();
    const cell = (value: ArchiveCell['value']) => ({ column, header, text, value });
    if (MISSING.test(text)) return cell(null);
    const number = plainNumber(text);
    if (Number.isNaN(number)) return cell('is no number');
    const value = number * scale + offset;
    if (column === 'temp_c') tempC = value;
    return cell(name === 'pressure_msl' ? seaLevel.toStation(value, tempC) : value);
  });
}
