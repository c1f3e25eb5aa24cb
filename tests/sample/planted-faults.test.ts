import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isoMinute, localText, standardClock } from '../../scripts/sample/calendar.ts';
import { linesOf, SAMPLES, truthOf } from './read-sample.ts';

const FOLDER = 'sorrel-fork';
const truth = truthOf(FOLDER);
const fault = (kind: string, where: string) => {
  const found = truth.faults.find((one) => one.kind === kind && one.where === where);
  if (found === undefined) throw new Error(`no planted ${kind} at ${where}`);
  return found;
};
const lane = linesOf(FOLDER, 'logs/cables-lane.csv.gz');

test('every kind of fault is planted and stands in the README', () => {
  const readme = readFileSync(join(SAMPLES, FOLDER, 'README.md'), 'utf8');
  const kinds = [
    'stuck',
    'spike',
    'headspace',
    'duplicate',
    'clock',
    'unit',
    'gap',
    'silent',
    'reject',
    'meter-reset',
    'outside',
    'repeated-hour',
  ];
  expect(new Set(truth.faults.map((one) => one.kind))).toEqual(new Set(kinds));
  for (const one of truth.faults) expect(readme, one.where).toContain(`| ${one.kind} | ${one.where}`);
});

test('the stuck temperature repeats itself while its neighbours move', () => {
  const one = fault('stuck', 'B1 C3 sensor 4');
  const [header, ...rows] = linesOf(FOLDER, 'logs/b1-cables.csv').map((line) => line.split(','));
  const inside = rows.filter((row) => {
    const [, month, day, year, hour, minute, half] = /(\d+)\/(\d+)\/(\d+) (\d+):(\d+) (AM|PM)/.exec(row[0])!;
    const text = `${year}-${month}-${day} ${String((Number(hour) % 12) + (half === 'PM' ? 12 : 0)).padStart(2, '0')}:${minute}`;
    return text >= localText(one.fromMs) && text <= localText(one.toMs);
  });
  const values = (name: string) => new Set(inside.map((row) => row[header.indexOf(name)]));
  expect(inside.length).toBe(one.count);
  expect(values('T C3-4').size).toBe(1);
  expect(values('T C3-3').size).toBeGreaterThan(20);
  expect(values('T C3-5').size).toBeGreaterThan(20);
});

test('the gaps hold nothing', () => {
  for (const [where, lines, column, id] of [
    ['B3', lane, 1, 'B3'],
    ['fan F6', linesOf(FOLDER, 'logs/fans-lane.csv.gz'), 1, 'F6'],
  ] as const) {
    const one = fault('gap', where);
    const found = lines.filter((line) => {
      const cells = line.split(',');
      return cells[column] === id && cells[0] >= localText(one.fromMs) && cells[0] <= localText(one.toMs);
    });
    expect(found).toEqual([]);
    expect((one.toMs - one.fromMs) / 86_400_000).toBeGreaterThan(3);
  }
});

test('the day that was sent twice stands twice, the rest once', () => {
  const seen = new Map<string, number>();
  for (const line of lane) seen.set(line, (seen.get(line) ?? 0) + 1);
  const twice = [...seen.values()].filter((count) => count === 2).length;
  expect(twice).toBe(fault('duplicate', 'logs/cables-lane.csv.gz').count);
});

test('Celsius in the Fahrenheit file can be told: far below the other cable, and back', () => {
  const one = fault('unit', 'B4 C2');
  const iso = (ms: number) => new Date(ms).toISOString().slice(0, 16);
  const temps = (cable: string) =>
    linesOf(FOLDER, 'logs/cables-shop.csv.gz')
      .map((line) => line.split(','))
      .filter(
        (row) => row[1] === 'B4' && row[2] === cable && row[0] >= iso(one.fromMs) && row[0] <= `${iso(one.toMs)}Z`,
      )
      .map((row) => Number(row[4]));
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(temps('C2').length).toBe(one.count);
  expect(Math.abs(mean(temps('C2')) * 1.8 + 32 - mean(temps('C1')))).toBeLessThan(3);
  expect(mean(temps('C1')) - mean(temps('C2'))).toBeGreaterThan(25);
});

test('the current of F1 is 0 after its sensor died while the meter climbs', () => {
  const one = fault('silent', 'fan F1');
  const rows = linesOf(FOLDER, 'logs/fan-f1.csv.gz')
    .map((line) => line.split(','))
    .filter((row) => row[0] >= isoMinute(standardClock(one.fromMs)) && row[0] !== 'time');
  expect(new Set(rows.map((row) => row[2]))).toEqual(new Set(['0.0']));
  expect(Number(rows.at(-1)![3]) - Number(rows[0][3])).toBeGreaterThan(1000);
});

test('the standard-time logger shows the hour that spring leaves out and no hour twice; the others the other way round', () => {
  const stamps = (path: string, id: string) =>
    linesOf(FOLDER, path)
      .filter((line) => line.split(',')[1] === id)
      .map((line) => line.split(',')[0]);
  const wrong = stamps('logs/plenum-b2.csv', 'B2');
  expect(wrong).toContain('2025-03-09 02:00');
  expect(wrong.filter((one) => one === '2024-11-03 01:00').length).toBe(1);
  const right = stamps('logs/plenum.csv', 'B1');
  expect(right).not.toContain('2025-03-09 02:00');
  expect(right.filter((one) => one === '2024-11-03 01:00').length).toBe(2);
  expect(stamps('logs/fans-lane.csv.gz', 'F3').filter((one) => one === '2024-11-03 01:30').length).toBe(2);
});

test('the cable that hangs out swings with the day, and did not before', () => {
  const one = fault('headspace', 'B2 C3');
  const temps = lane
    .map((line) => line.split(','))
    .filter((row) => row[1] === 'B2' && row[2] === 'C3' && row[3] === '3')
    .map((row) => ({ time: row[0], temp: Number(row[4]) }));
  const swing = (from: string, to: string) => {
    const inside = temps.filter((row) => row.time >= from && row.time < to).map((row) => row.temp);
    return Math.max(...inside) - Math.min(...inside);
  };
  expect(localText(one.fromMs).slice(0, 10)).toBe('2025-02-10');
  expect(swing('2025-01-20', '2025-01-27')).toBeLessThan(5);
  expect(swing('2025-02-20', '2025-02-27')).toBeGreaterThan(15);
});

test('each spike stands far off the readings beside it', () => {
  const one = truth.faults.find((each) => each.kind === 'spike' && each.where === 'B3')!;
  for (const { cable, sensor, ms } of one.cells!) {
    const rows = lane
      .map((line) => line.split(','))
      .filter((row) => row[1] === 'B3' && row[2] === cable && row[3] === String(sensor));
    const i = rows.findIndex((row) => row[0] === localText(ms));
    const [before, at, after] = [i - 1, i, i + 1].map((k) => Number(rows[k][4]));
    expect(Math.min(Math.abs(at - before), Math.abs(at - after))).toBeGreaterThan(20);
  }
});
