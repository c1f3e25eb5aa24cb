import type { Stamp } from '../clock/iso-stamp.ts';
import { type StampParser, stampParser } from '../clock/stamp-parser.ts';
import type { Stamps } from '../clock/stamps.ts';
import { KEYS } from '../column-keys.ts';
import type { ColumnPlan } from './column-plan.ts';
import type { CsvRecords } from './csv-records.ts';
import { cutOff } from './cut-off.ts';
import type { FileReading } from './file-reading.ts';
import { findPlace, type Place } from './places.ts';
import { shown } from './shown.ts';
import { isMissing } from './words.ts';

const DAY_MS = 86_400_000;

/** Where and when the rows of a file belong; rows are counted from 0 below the header. */
export interface PlacedRows {
  stamps: Stamps;
  /** bills: the end of the billed time, else null; same `local` as the stamps' own */
  ends: Stamps | null;
  /** the distinct places; `stamps.series` points into it */
  places: Place[];
  /** rows that cannot be placed, with why */
  reasons: Map<number, string>;
}

export function placeRows(reading: FileReading, records: CsvRecords, plan: ColumnPlan): PlacedRows {
  const rows = records.fields.length - 1;
  const keys = KEYS[reading.spec.holds];
  const parse = stampParser(reading.spec.timeFormat, !keys.dateEnough);
  const stamps = emptyStamps(rows);
  const ends = plan.times.length > 1 ? emptyStamps(rows) : null;
  const findSeries = placeFinder(reading, plan);
  const wholeDay = new Uint8Array(rows);
  const reasons = new Map<number, string>();
  for (let row = 0; row < rows; row++) {
    const fields = records.fields[row + 1];
    const reason =
      fieldsReason(fields, plan) ??
      (row === rows - 1 ? cutOff(reading.text, fields.length, plan.headers.length) : null) ??
      readStamp(stamps, row, fields, plan.times[0], parse, null) ??
      (ends === null ? null : readStamp(ends, row, fields, plan.times[1], parse, wholeDay));
    const series = reason ?? findSeries.find(fields);
    if (typeof series === 'number') stamps.series[row] = series;
    else {
      stamps.ms[row] = Number.NaN;
      reasons.set(row, series);
    }
  }
  if (ends !== null) {
    ends.series.set(stamps.series);
    if (endsAreNextStarts(stamps, ends)) for (let row = 0; row < rows; row++) ends.ms[row] -= wholeDay[row] * DAY_MS;
  }
  return { stamps, ends, places: findSeries.places, reasons };
}

function emptyStamps(rows: number): Stamps {
  return {
    ms: new Float64Array(rows).fill(Number.NaN),
    local: new Uint8Array(rows),
    series: new Int32Array(rows).fill(-1),
  };
}

/** Too few fields, or more than the header has: then nothing says which cell is which. */
function fieldsReason(fields: readonly string[], plan: ColumnPlan): string | null {
  if (fields.length <= plan.lastIndex)
    return `has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'}, too few for the header's ${plan.headers.length}`;
  if (fields.length > plan.headers.length && fields.slice(plan.headers.length).some((field) => field.trim() !== '')) {
    return `has ${fields.length} fields, more than the header's ${plan.headers.length}`;
  }
  return null;
}

/**
 * Bills that follow each other say either the last day or the day on which the next begins. Read as the last day, the second
 * kind would overlap the next bill by a day, so the kind that more bills of the file fit is taken.
 */
function endsAreNextStarts(starts: Stamps, ends: Stamps): boolean {
  const begins = new Set(Array.from(starts.ms, (ms, row) => `${starts.series[row]} ${ms}`));
  const fits = (shiftMs: number) =>
    Array.from(ends.ms).filter((ms, row) => begins.has(`${starts.series[row]} ${ms - shiftMs}`)).length;
  return fits(DAY_MS) > fits(0);
}

/** A row's time as it stands, of its two columns where date and time of day have one each; empty where it has none. */
export function timeText(fields: readonly string[], { index, clockIndex }: ColumnPlan['times'][number]): string {
  const text = fields[index] ?? '';
  if (clockIndex === null) return text;
  const clock = (fields[clockIndex] ?? '').trim();
  return isMissing(clock) || isMissing(text.trim()) ? '' : `${text.trim()} ${clock}`;
}

function readStamp(
  stamps: Stamps,
  row: number,
  fields: readonly string[],
  time: ColumnPlan['times'][number],
  parse: StampParser,
  wholeDay: Uint8Array | null,
): string | null {
  const { header } = time;
  const text = timeText(fields, time);
  if (isMissing(text.trim())) return `has no time (${header})`;
  const stamp: Stamp | string = parse(text);
  if (typeof stamp === 'string') return `the time ${shown(text.trim())} (${header}) ${stamp}`;
  // A bill's last day belongs to it whole.
  if (wholeDay !== null && stamp.dateOnly) wholeDay[row] = 1;
  stamps.ms[row] = wholeDay !== null && stamp.dateOnly ? stamp.ms + DAY_MS : stamp.ms;
  stamps.local[row] = stamp.kind === 'local' ? 1 : 0;
  return null;
}

/** Looks a row's place up by its cells, each combination once. */
function placeFinder({ season }: FileReading, plan: ColumnPlan) {
  const places: Place[] = [];
  const known = new Map<string, number | string>();
  const seriesOf = new Map<string, number>();
  const columns = plan.places;
  const lookUp = (fields: readonly string[]): number | string => {
    const said: Record<string, string> = {};
    for (const key in plan.constants) said[key] = plan.constants[key];
    for (const { key, index } of columns) said[key] = fields[index].trim();
    if (plan.slots !== null && said.bin === undefined) said.bin = season.bins[0].id;
    const place = findPlace(season, plan.slots === null ? said : { bin: said.bin });
    if (typeof place === 'string') return place;
    const name = `${Object.values(place.texts).join('\n')}\n${place.sensor}`;
    let series = seriesOf.get(name);
    if (series === undefined) {
      series = places.length;
      seriesOf.set(name, series);
      places.push(place);
    }
    return series;
  };
  return {
    places,
    find(fields: readonly string[]): number | string {
      let key = '';
      for (const { index } of columns) key += `${fields[index]}\n`;
      let found = known.get(key);
      if (found === undefined) {
        found = lookUp(fields);
        known.set(key, found);
      }
      return found;
    },
  };
}
