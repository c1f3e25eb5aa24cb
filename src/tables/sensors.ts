import type { Table } from 'apache-arrow';
import { onceFor } from '../base/once-for.ts';
import { integers, numbers, textColumn, texts } from './arrow.ts';

/** One sensor's readings in time order; every array is [readings]. NaN is missing. */
export interface SensorSeries {
  bin: string;
  cable: string;
  sensor: number;
  heightM: number;
  timeMs: Float64Array;
  tempC: Float64Array;
  moistureWb: Float64Array;
  tempFlags: Uint8Array;
  moistureFlags: Uint8Array;
  /** row of the readings table */
  rows: Int32Array;
}

/** The readings table cut into sensors, by bin, cable, sensor, in order of first appearance; a table is cut once. */
export const sensorSeries: (readings: Table) => readonly SensorSeries[] = onceFor(cut);

function cut(readings: Table): SensorSeries[] {
  const time = numbers(readings, 'time');
  const bin = textColumn(readings, 'bin');
  const cable = textColumn(readings, 'cable');
  const sensor = integers(readings, 'sensor');
  const rowsOf = new Map<string, number[]>();
  for (let row = 0; row < time.length; row++) {
    const key = `${bin.codes[row]} ${cable.codes[row]} ${sensor[row]}`;
    const rows = rowsOf.get(key);
    if (rows === undefined) rowsOf.set(key, [row]);
    else rows.push(row);
  }
  const height = numbers(readings, 'height_m');
  const tempC = numbers(readings, 'temp_c');
  const moistureWb = numbers(readings, 'moisture_wb');
  const tempFlags = integers(readings, 'temp_flags');
  const moistureFlags = integers(readings, 'moisture_flags');
  return [...rowsOf.values()].map((found) => {
    // A stable sort: of two rows with one time the earlier in the file stays first.
    const rows = Int32Array.from(found.sort((a, b) => time[a] - time[b] || a - b));
    const pick = (source: Float64Array) => Float64Array.from(rows, (row) => source[row]);
    const first = rows[0];
    return {
      bin: bin.values[bin.codes[first]],
      cable: cable.values[cable.codes[first]],
      sensor: sensor[first],
      heightM: height[first],
      timeMs: pick(time),
      tempC: pick(tempC),
      moistureWb: pick(moistureWb),
      tempFlags: Uint8Array.from(rows, (row) => tempFlags[row]),
      moistureFlags: Uint8Array.from(rows, (row) => moistureFlags[row]),
      rows,
    };
  });
}

/**
 * Rows of a table whose text column says `value`, in time order, as numbers of the named columns.
 *
 * @param time  stands in the place of the table's own, [rows]
 */
export function rowsWhere(
  table: Table,
  column: string,
  value: string,
  names: readonly string[],
  time = numbers(table, 'time'),
): Record<string, Float64Array> {
  const which = texts(table, column);
  const rows = [...which.keys()].filter((row) => which[row] === value).sort((a, b) => time[a] - time[b] || a - b);
  const out: Record<string, Float64Array> = {};
  for (const name of names) {
    const isFlags = name === 'flags' || name.endsWith('_flags');
    const source = name === 'time' ? time : isFlags ? integers(table, name) : numbers(table, name);
    out[name] = Float64Array.from(rows, (row) => source[row]);
  }
  return out;
}
