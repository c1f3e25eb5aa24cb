import type { Finding } from '../../src/season/loaded.ts';
import { type RawColumn, type TextColumn, toArrow } from '../../src/tables/arrow.ts';
import { TABLES, type TableName } from '../../src/tables/columns.ts';
import { DAY, DAYS, HEIGHTS, HOUR, START } from './example-season.ts';

function text(values: readonly string[]): TextColumn {
  const unique = [...new Set(values)];
  return { codes: Int32Array.from(values, (value) => unique.indexOf(value)), values: unique };
}

/** A table from rows; columns that a row leaves out are empty. */
export function table(name: TableName, rows: readonly Readonly<Record<string, string | number>>[]) {
  const columns: Record<string, RawColumn> = {};
  for (const def of TABLES[name]) {
    const of = rows.map((row) => row[def.name]);
    if (def.type === 'text') columns[def.name] = text(of.map((value) => String(value ?? '')));
    else if (def.type === 'integer') columns[def.name] = Int16Array.from(of, (value) => Number(value ?? 0));
    else if (def.type === 'flags') columns[def.name] = Uint8Array.from(of, (value) => Number(value ?? 0));
    else columns[def.name] = Float64Array.from(of, (value) => Number(value ?? Number.NaN));
  }
  return toArrow(name, columns);
}

export function readings(bins: readonly string[]) {
  const rows: Record<string, string | number>[] = [];
  for (let hour = 0; hour < DAYS * 24; hour += 3) {
    const day = hour / 24;
    if (day > 90 && day < 95) continue;
    for (const [b, id] of bins.entries()) {
      for (const [c, cable] of ['C1', 'C5'].entries()) {
        HEIGHTS.forEach((height_m, i) => {
          const front = Math.min(1, Math.max(0, (day - 10 - i * 3 - c * 2) / 6));
          rows.push({
            time: START + hour * HOUR,
            bin: id,
            cable,
            sensor: i + 1,
            height_m,
            temp_c: 18 - 14 * front + b + Math.sin(day / 9 + i),
            moisture_wb: 0.179 - 0.023 * Math.min(1, Math.max(0, (day - i * 6) / 30)),
            temp_flags: i === 5 && day > 120 ? 4 : 0,
            moisture_flags: i === 5 && day > 120 ? 4 : 0,
            file: 'logs/cables.csv',
          });
        });
      }
    }
  }
  return table('readings', rows);
}

export const FINDINGS: Finding[] = [
  {
    kind: 'stuck',
    where: 'B1 C5 sensor 3',
    binId: 'B1',
    fromMs: START + 20 * DAY,
    toMs: START + 26 * DAY,
    cells: 144,
    text: 'B1 C5 sensor 3 kept 61.2 °F for 144 hours while its neighbours moved.',
    advice: 'Check the sensor and its lead.',
  },
  {
    kind: 'gap',
    where: 'logs/cables.csv',
    binId: null,
    fromMs: START + 90 * DAY,
    toMs: START + 95 * DAY,
    cells: 960,
    text: 'No cable was read for 5 days; 960 readings are lacking.',
    advice: null,
  },
  {
    kind: 'clock',
    where: 'logs/plenum.csv',
    binId: null,
    fromMs: START,
    toMs: START + DAYS * DAY,
    cells: 0,
    text: 'logs/plenum.csv keeps standard time all year.',
    advice: 'State `time_zone: local standard` for the file.',
  },
];
