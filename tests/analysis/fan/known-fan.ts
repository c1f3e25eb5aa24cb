import type { Table } from 'apache-arrow';
import type { Fan } from '../../../src/bin/fan.ts';
import type { Season } from '../../../src/season/season.ts';
import { toArrow } from '../../../src/tables/arrow.ts';

export const H = 3_600_000;
export const MIN = 60_000;

/** A small seeded generator (mulberry32), so that the truth comes from no code of the kit. */
export function randomOf(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const FAN: Fan = {
  id: 'F1',
  nameplateW: 15 * 745.6999,
  supply: { phases: 3, volts: 230, powerFactor: 0.85 },
  load: null,
  motorEfficiency: null,
  runningAboveA: null,
  tariffId: null,
  curve: null,
  heater: null,
};

export const SEASON = {
  site: { latitudeDeg: null, longitudeDeg: null, elevationM: null, timeZone: 'America/Chicago' },
  tariffs: [],
  fans: [FAN],
  bins: [],
} as unknown as Season;

/** A fan whose every moment is known, to the minute. */
export interface KnownFan {
  fromMs: number;
  toMs: number;
  runs: { fromMs: number; toMs: number }[];
  hours: number;
  /** W while on */
  powerAt(ms: number): number;
  onAt(ms: number): boolean;
  /** J since fromMs */
  energyTo(ms: number): number;
  /** s since fromMs */
  runTo(ms: number): number;
}

export function knownFan(seed: number, days = 200, meanRunH = 9, meanRestH = 14, watt = 12_600): KnownFan {
  const random = randomOf(seed);
  const fromMs = Date.UTC(2024, 8, 25, 5);
  const toMs = fromMs + days * 24 * H;
  const runs: { fromMs: number; toMs: number }[] = [];
  let at = fromMs + Math.round(-Math.log(1 - random()) * meanRestH * 60) * MIN;
  while (at < toMs) {
    const end = Math.min(toMs, at + Math.max(5, Math.round(-Math.log(1 - random()) * meanRunH * 60)) * MIN);
    runs.push({ fromMs: at, toMs: end });
    at = end + Math.max(5, Math.round(-Math.log(1 - random()) * meanRestH * 60)) * MIN;
  }
  // Cold, dense air takes more power: 5 % either way over the season, 2 % over the day.
  const powerAt = (ms: number) =>
    watt * (1 + 0.05 * Math.sin(ms / (60 * 24 * H)) + 0.02 * Math.sin((ms / (24 * H)) * 2 * Math.PI));
  const minutes = (toMs - fromMs) / MIN;
  const energy = new Float64Array(minutes + 1);
  const run = new Float64Array(minutes + 1);
  const on = new Uint8Array(minutes + 1);
  for (const r of runs) on.fill(1, (r.fromMs - fromMs) / MIN, (r.toMs - fromMs) / MIN);
  for (let m = 0; m < minutes; m++) {
    energy[m + 1] = energy[m] + (on[m] ? powerAt(fromMs + m * MIN) * 60 : 0);
    run[m + 1] = run[m] + (on[m] ? 60 : 0);
  }
  const minute = (ms: number) => Math.min(minutes, Math.max(0, Math.round((ms - fromMs) / MIN)));
  return {
    fromMs,
    toMs,
    runs,
    hours: run[minutes] / 3600,
    powerAt,
    onAt: (ms) => on[minute(ms)] === 1,
    energyTo: (ms) => energy[minute(ms)],
    runTo: (ms) => run[minute(ms)],
  };
}

export interface Row {
  time: number;
  fan?: string;
  current?: number;
  power?: number;
  energy?: number;
  on?: number;
  run?: number;
  flags?: number;
}

/** Rows as the fan table. */
export function fanTable(rows: readonly Row[]): Table {
  const column = (pick: (row: Row) => number | undefined) => Float64Array.from(rows, (row) => pick(row) ?? Number.NaN);
  const ids = [...new Set(rows.map((row) => row.fan ?? 'F1'))];
  return toArrow('fan', {
    time: column((row) => row.time),
    fan: { codes: Int32Array.from(rows, (row) => ids.indexOf(row.fan ?? 'F1')), values: ids },
    current_a: column((row) => row.current),
    power_w: column((row) => row.power),
    energy_j: column((row) => row.energy),
    on: column((row) => row.on),
    run_s: column((row) => row.run),
    flags: Uint8Array.from(rows, (row) => row.flags ?? 0),
    file: { codes: new Int32Array(rows.length), values: ['fan.csv'] },
  });
}

/** Sample moments every `minutes`, from the first minute to the last. */
export function sampleTimes(known: KnownFan, minutes: number): number[] {
  const times: number[] = [];
  for (let ms = known.fromMs; ms <= known.toMs; ms += minutes * MIN) times.push(ms);
  return times;
}

export const AMP = 1 / (Math.sqrt(3) * 230 * 0.85);
