import { gzipSync } from 'node:zlib';
import type { BinRun } from './bin-run.ts';
import type { Reading } from './cable-log.ts';
import { localClock, localText, usMinute } from './calendar.ts';
import type { PlenumRow, StationRow } from './machine-log.ts';

/** A file of the sample, as text; `.gz` ones are packed when written. */
export interface SampleFile {
  path: string;
  text: string;
}

export const num = (value: number | null, digits: number): string => (value === null ? '' : value.toFixed(digits));

/** Long cable file: one row a sensor and moment. */
export function longCsv(readings: readonly Reading[], stamp: (ms: number) => string): string[] {
  return [
    'Stamp,Bin,Cable,No,T,MC',
    ...readings.map(
      (one) => `${stamp(one.ms)},${one.bin},${one.cable},${one.sensor},${num(one.temp, 1)},${num(one.moisture, 1)}`,
    ),
  ];
}

/** Wide cable file: one row a moment, `T C1-1 … M C1-1 …`. */
export function wideCsv(readings: readonly Reading[], run: BinRun): string[] {
  const keys = run.sensors.map((one) => `${one.cable}-${one.sensor}`);
  const lines = [['DateTime', ...keys.map((key) => `T ${key}`), ...keys.map((key) => `M ${key}`)].join(',')];
  for (let i = 0; i < readings.length; i += keys.length) {
    const row = readings.slice(i, i + keys.length);
    lines.push(
      [
        usMinute(localClock(row[0].ms)),
        ...row.map((one) => num(one.temp, 1)),
        ...row.map((one) => num(one.moisture, 1)),
      ].join(','),
    );
  }
  return lines;
}

export const text = (lines: readonly string[], end = '\n'): string => lines.join(end) + end;

/** Sorts in place; rows of one time keep their order. */
export const byTime = <T extends { ms: number }>(rows: T[]): T[] => rows.sort((a, b) => a.ms - b.ms);

export const plenumCsv = (rows: readonly PlenumRow[], stamp: (ms: number) => string): string[] => [
  'time,bin,t,rh,sp',
  ...rows.map(
    (one) => `${stamp(one.ms)},${one.bin},${one.temp.toFixed(1)},${one.rh.toFixed(1)},${one.pressure.toFixed(2)}`,
  ),
];

export const stationCsv = (rows: readonly StationRow[]): string[] => [
  'time,temp,rh,hpa',
  ...rows.map((row) => `${localText(row.ms)},${row.temp.toFixed(1)},${row.rh},${row.hpa.toFixed(1)}`),
];

/** Bytes of a file as it is written: gzip without a time in its header, so that the same text gives the same bytes. */
export const fileBytes = (file: SampleFile): Buffer =>
  file.path.endsWith('.gz') ? gzipSync(Buffer.from(file.text), { level: 9 }) : Buffer.from(file.text);
