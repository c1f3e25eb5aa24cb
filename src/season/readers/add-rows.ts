import { FLAGS } from '../../tables/flags.ts';
import type { FileClock } from '../clock/file-clock.ts';
import { fileZone } from '../clock/file-zone.ts';
import { resolveStamps } from '../clock/resolve-stamps.ts';
import { KEYS } from '../column-keys.ts';
import type { ColumnPlan, MeasuredColumn } from './column-plan.ts';
import type { CsvRecords } from './csv-records.ts';
import { type FileReading, isOutside } from './file-reading.ts';
import { numberCell } from './number-cell.ts';
import type { PlacedRows } from './place-rows.ts';
import type { Place } from './places.ts';
import type { WideSlot } from './wide-columns.ts';
import { isMissing, stateWord } from './words.ts';

/**
 * Put the placed rows of a file into its table, cell by cell, and count each.
 *
 * @param textOf  a record as it stands in the file, for those rejected here
 */
export function addRows(
  reading: FileReading,
  records: CsvRecords,
  plan: ColumnPlan,
  placed: PlacedRows,
  clock: FileClock,
  textOf: (record: number) => string,
): void {
  const { tally, spec, season } = reading;
  const zone = fileZone(spec.timeZone, season.site.timeZone);
  const endMs = placed.ends === null ? null : resolveStamps(placed.ends, zone, false).timeMs;
  const clockCells = new Int32Array(placed.stamps.ms.length);
  for (let row = 0; row < placed.stamps.ms.length; row++) {
    const series = placed.stamps.series[row];
    if (series < 0) continue;
    const fields = records.fields[row + 1];
    const line = records.lines[row + 1];
    const timeMs = clock.timeMs[row];
    if (endMs !== null && !(endMs[row] > timeMs)) {
      tally.rejectRow(line, plan.measured.length, textOf(row + 1), 'ends before it begins');
      continue;
    }
    if (endMs === null ? isOutside(reading, timeMs) : isOutside(reading, timeMs, endMs[row])) {
      tally.outside += plan.measured.length;
      continue;
    }
    const place = placed.places[series];
    const before = tally.kept;
    if (plan.slots === null) {
      const at = openRow(reading, place, timeMs, endMs?.[row]);
      for (const column of plan.measured) addCell(reading, column, fields[column.index], at, line);
      if (clock.clock[row] === 1) flagRow(reading, at);
    } else addWideRow(reading, plan, plan.slots, place, fields, line, timeMs, clock.clock[row] === 1);
    clockCells[row] = tally.kept - before;
    tally.keptRow(timeMs);
  }
  for (const found of clock.findings) {
    const cells = found.rows.reduce((sum, row) => sum + clockCells[row], 0);
    const { fromMs, toMs, text, advice } = found;
    reading.findings.push({
      kind: 'clock',
      where: reading.path,
      binId: onlyBin(placed.places),
      fromMs,
      toMs,
      cells,
      text,
      advice,
    });
  }
}

function onlyBin(places: readonly Place[]): string | null {
  const bins = new Set(places.map((place) => place.texts.bin));
  return bins.size === 1 ? ([...bins][0] ?? null) : null;
}

function openRow({ table, path, spec }: FileReading, place: Place, timeMs: number, endMs?: number): number {
  const at = table.addRow();
  table.setNumber(endMs === undefined ? 'time' : 'from', at, timeMs);
  if (endMs !== undefined) table.setNumber('to', at, endMs);
  for (const key in place.texts) table.setText(key, at, place.texts[key]);
  if (place.sensor !== null) table.setNumber('sensor', at, place.sensor);
  if (place.heightM !== null) table.setNumber('height_m', at, place.heightM);
  if (spec.holds === 'weather') table.setText('role', at, spec.role);
  table.setText('file', at, path);
  return at;
}

function addWideRow(
  reading: FileReading,
  plan: ColumnPlan,
  slots: readonly WideSlot[],
  row: Place,
  fields: readonly string[],
  line: number,
  timeMs: number,
  wrongClock: boolean,
): void {
  const opened = new Int32Array(slots.length).fill(-1);
  for (const column of plan.measured) {
    const { places } = slots[column.slot];
    // A header that names its bin wins over the row's.
    const place =
      places.size === 1 && row.texts.bin !== undefined && plan.places.length === 0
        ? [...places.values()][0]
        : places.get(row.texts.bin);
    const text = fields[column.index];
    if (place === undefined) {
      if (isMissing(text.trim())) reading.tally.missing += 1;
      else reading.tally.rejectCell(line, column.header, text, `bin ${row.texts.bin} has no such sensor`);
      continue;
    }
    if (opened[column.slot] < 0) {
      opened[column.slot] = openRow(reading, place, timeMs);
      if (wrongClock) flagRow(reading, opened[column.slot]);
    }
    addCell(reading, column, text, opened[column.slot], line);
  }
}

function addCell({ table, tally }: FileReading, column: MeasuredColumn, raw: string, at: number, line: number): void {
  const text = raw.trim();
  if (isMissing(text)) {
    tally.missing += 1;
    return;
  }
  const value = column.number === null ? (stateWord(text) ?? 'is neither on nor off') : numberCell(text, column.number);
  if (typeof value === 'string') {
    tally.rejectCell(line, column.header, raw, value);
    return;
  }
  table.setNumber(column.key.column, at, value);
  table.keepCell(at);
  tally.kept += 1;
}

/** Mark a row as not to be believed for its time. */
function flagRow({ table, spec }: FileReading, at: number): void {
  const holds = KEYS[spec.holds];
  if (holds.table === 'readings') {
    table.addFlag('temp_flags', at, FLAGS.clock);
    table.addFlag('moisture_flags', at, FLAGS.clock);
  } else if (holds.ordered) table.addFlag('flags', at, FLAGS.clock);
}
