import { describe, expect, it } from 'vitest';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { type MeterKind, meterIntervals } from '../../../src/analysis/fan/meter.ts';
import { fullLoadCurrentA, nominalPower, powerFromCurrent } from '../../../src/analysis/fan/nominal-power.ts';
import { findRunningThreshold } from '../../../src/analysis/fan/running-threshold.ts';
import { usualIntervals } from '../../../src/analysis/fan/usual-interval.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { FAN, fanTable, H, MIN } from './known-fan.ts';

const HP = 745.6999;
const at = (minutes: number) => Date.UTC(2024, 9, 1) + minutes * MIN;
const KWH = 3.6e6;

describe('power of a motor', () => {
  it('three phases: 40 A at 230 V and power factor 0.85 are 1.732 x 230 x 40 x 0.85 = 13.54 kW', () => {
    // kW = 1.732 V I PF / 1000 (the three-phase power formula, common practice)
    expect(powerFromCurrent(FAN, 40) / 1000).toBeCloseTo(13.545, 2);
  });
  it('one phase: 28 A at 230 V and power factor 0.8 are 5.152 kW', () => {
    expect(powerFromCurrent({ ...FAN, supply: { phases: 1, volts: 230, powerFactor: 0.8 } }, 28)).toBeCloseTo(5152, 6);
  });
  it('without a supply a current tells no power', () => {
    expect(powerFromCurrent({ ...FAN, supply: null }, 40)).toBeNaN();
  });
  it('15 hp x 1 kW/hp x 720 h = 10,800 kWh (Univ. of Nebraska-Lincoln CropWatch, 14 Oct 2015; row cond-fan)', () => {
    const rows = Array.from({ length: 721 }, (_, h) => ({ time: at(60 * h), on: 1 }));
    const got = fanSeason(FAN, fanTable(rows));
    expect(got.onHours).toBe(720);
    expect(got.energyKwh).toBeCloseTo(10_800, 6);
    expect(got.energyFrom).toBe('nameplate');
    expect(got.how).toContain('kW (15 hp), taken to draw 15 kW by the extension planning figure');
  });
  it('stated load 95 % and motor efficiency 90 %: 15 hp x 0.7457 x 0.95 / 0.9 = 11.807 kW (kW = hp x 0.746 / eff, section 4)', () => {
    expect(nominalPower({ ...FAN, load: 0.95, motorEfficiency: 0.9 }).powerW).toBeCloseTo(11_807, 0);
  });
  it('full-load current comes near the electrical code’s tables (NEC 430.248 and .250, rows fla, from memory): a floor, so within 30 %', () => {
    const fan = (hp: number, phases: 1 | 3, powerFactor: number): Fan => ({
      ...FAN,
      nameplateW: hp * HP,
      supply: { phases, volts: 230, powerFactor },
    });
    for (const [motor, amps] of [
      [fan(10, 3, 0.85), 28],
      [fan(20, 3, 0.85), 54],
      [fan(40, 3, 0.85), 104],
      [fan(5, 1, 0.85), 28],
      [fan(10, 1, 0.85), 50],
    ] as const) {
      expect(fullLoadCurrentA(motor) / amps).toBeGreaterThan(0.7);
      expect(fullLoadCurrentA(motor) / amps).toBeLessThan(1.3);
    }
  });
});

describe('runs by hand', () => {
  it('15-minute current: on from the sample that says so until the next sample', () => {
    // 0 off, 15 on, 30 on, 45 off, 60 off: on from 15 to 45 = 0.5 h; 40 A = 13.545 kW -> 6.77 kWh
    const amps = [0, 40, 40, 0, 0];
    const got = fanSeason(
      { ...FAN, runningAboveA: 4 },
      fanTable(amps.map((current, i) => ({ time: at(15 * i), current }))),
    );
    expect(got.onHours).toBe(0.5);
    expect(got.starts).toBe(1);
    expect(got.energyKwh).toBeCloseTo(6.7725, 3);
    expect(got.runsFrom).toBe('current');
  });
  it('a gap of 60 minutes in a 15-minute log is unknown (over 45), one of 45 is not; a flagged row makes part of a gap', () => {
    const times = [
      0, 15, 30, 45, 60, 75, 90, 105, 120, 135, 150, 195, 210, 225, 240, 300, 315, 330, 345, 360, 375, 390, 405, 420,
    ];
    const rows = times.map((minutes) => ({ time: at(minutes), on: 1, flags: 0 }));
    const got = fanSeason(FAN, fanTable(rows));
    expect(got.unknownHours).toBe(1);
    expect(got.onHours).toBe(6);
    rows[11].flags = 1; // 195 is not believed: 150 to 210 is then 60 minutes too
    const flagged = fanSeason(FAN, fanTable(rows));
    expect(flagged.unknownHours).toBe(2);
    expect(flagged.how).toContain('1 flagged row is left out');
  });
  it('usual intervals follow the log’s pace: ten of 15 minutes, then ten of 60', () => {
    const times = Float64Array.from({ length: 21 }, (_, i) => (i <= 10 ? 15 * i : 150 + 60 * (i - 10)) * MIN);
    const usual = usualIntervals(times);
    expect(usual[0] / MIN).toBe(15);
    expect(usual[10] / MIN).toBe(60); // the first long one is usual by those after it
  });
  it('a fan that never ran and one that always ran are told by the nameplate', () => {
    const level = (amps: number) =>
      fanSeason(
        FAN,
        fanTable(Array.from({ length: 97 }, (_, i) => ({ time: at(15 * i), current: amps + 0.01 * (i % 7) }))),
      );
    expect(level(0.2).onHours).toBe(0);
    expect(level(0.2).notes?.join()).toContain('state running_above');
    expect(level(38).onHours).toBe(24);
  });
  it('energy meter alone: 3.25 kWh in 15 minutes is full at 13 kW, 1.3 kWh is 6 of 15 minutes', () => {
    // steady 3.25 a quarter hour for 4 h; the last interval uses 1.3: 4 h + 6 min = 4.1 h
    let kwh = 500;
    const rows = [0, 0, ...Array(16).fill(3.25), 1.3, 0, 0, 0].map((step, i) => {
      kwh += step;
      return { time: at(15 * i), energy: kwh * KWH };
    });
    const got = fanSeason(FAN, fanTable(rows));
    expect(got.onHours).toBeCloseTo(4.1, 6);
    expect(got.energyKwh).toBeCloseTo(53.3, 6);
    expect(got.starts).toBe(1);
    expect(got.runsFrom).toBe('meter');
  });
  it('run-time meter: 812.4 h to 836.4 h over a day without samples is 24 h on, none unknown', () => {
    const got = fanSeason(
      FAN,
      fanTable([
        { time: at(0), run: 812.4 * 3600 },
        { time: at(1440), run: 836.4 * 3600 },
      ]),
    );
    expect(got.onHours).toBeCloseTo(24, 6);
    expect(got.unknownHours).toBe(0);
  });
  it('run-time meter of a tenth of an hour, read each quarter hour: nights add up to what the meter counted', () => {
    // 100 nights of 480 to 490 min that begin and end at any minute: the meter's first and last reading tell the sum to 0.1 h
    const onMinutes = new Uint8Array(101 * 1440);
    for (let night = 0; night < 100; night++) {
      const from = night * 1440 + 300 + ((night * 7) % 60);
      onMinutes.fill(1, from, from + 480 + ((night * 3) % 11));
    }
    let minutes = 0;
    const rows = [...onMinutes].flatMap((on, minute) => {
      const run = (Math.floor((812.3 * 60 + minutes) / 6 + 1e-9) / 10) * 3600;
      minutes += on;
      return minute % 15 === 3 ? [{ time: at(minute), run }] : [];
    });
    const got = fanSeason(FAN, fanTable(rows));
    // A fifth of the 0.5 % that the kit promises: what the ends of the runs lose to rounding must not add up over a season.
    expect(Math.abs(got.onHours - minutes / 60)).toBeLessThan(0.001 * (minutes / 60));
    expect(got.starts).toBe(100);
  });
  it('a log of switchings by a twelve-hour timer: the first rest of 60 h is a rest, not a gap', () => {
    const rows = [0, 60, 72, 84, 96, 108, 120, 132, 144].map((hour, i) => ({ time: at(60 * hour), on: i % 2 }));
    const got = fanSeason(FAN, fanTable(rows));
    expect(got.onHours).toBe(48);
    expect(got.unknownHours).toBe(0);
  });
  it('run-time meter of a tenth of an hour that only ever moves by 0.2 and 0.3 h: no such step is impossible', () => {
    // one run of 25 h from one reading to another: by 0.2, 0.3, 0.2, ... each quarter hour, never by 0.1
    const rows = Array.from({ length: 121 }, (_, i) => ({
      time: at(15 * i),
      run: (Math.floor((812.3 + 0.25 * Math.min(100, Math.max(0, i - 10))) * 10 + 1e-6) / 10) * 3600,
    }));
    const got = fanSeason(FAN, fanTable(rows));
    expect(got.onHours).toBeCloseTo(25, 6);
    expect(got.unknownHours).toBe(0);
    expect(got.notes).toEqual([]);
  });
  it('no log: nothing is made up', () => {
    const got = fanSeason(FAN, fanTable([{ time: at(0), fan: 'F9', on: 1 }]));
    expect(got).toMatchObject({ runsFrom: null, energyFrom: null, onHours: 0, how: 'No log of this fan.' });
    expect(got.spans.state).toHaveLength(0);
  });
});

describe('threshold', () => {
  const fill = (parts: readonly (readonly [number, number])[]) =>
    Float64Array.from(
      parts.flatMap(([count, value]) => Array.from({ length: count }, (_, i) => value * (1 + 0.02 * Math.sin(i)))),
    );
  it.each([
    [
      'off and on',
      [
        [500, 0.1],
        [500, 40],
      ],
      0.2,
      39,
    ],
    [
      'one run in a thousand',
      [
        [5000, 0.1],
        [5, 40],
      ],
      0.2,
      39,
    ],
    [
      'a heater on a second level',
      [
        [500, 0],
        [200, 40],
        [200, 120],
      ],
      0,
      39,
    ],
    [
      'always on with a heater',
      [
        [500, 40],
        [500, 120],
      ],
      0,
      39,
    ],
    [
      'inrush among the runs',
      [
        [500, 0],
        [500, 40],
        [3, 250],
      ],
      0,
      39,
    ],
    [
      'controls that draw an ampere',
      [
        [500, 1.5],
        [500, 38],
      ],
      1.6,
      37,
    ],
  ] as const)('%s: lies between', (_, parts, off, on) => {
    const { above } = findRunningThreshold(fill(parts as unknown as [number, number][]), 44);
    expect(above).toBeGreaterThanOrEqual(off);
    expect(above).toBeLessThan(on);
  });
});

describe('meter faults by hand', () => {
  const kind: MeterKind = { name: 'energy meter', unit: 'kWh', unitSi: 1, mostPerSecond: 20 / 3600 };
  const read = (...values: number[]) =>
    meterIntervals({ timeMs: Float64Array.from(values, (_, i) => i * H), value: Float64Array.from(values) }, kind);
  it('a reset: 810, 820, 5, 15 advances 10, 5, 10', () => {
    const got = read(810, 820, 5, 15);
    expect([...got.advance]).toEqual([10, 5, 10]);
    expect(got.notes).toHaveLength(1);
  });
  it('a rollover: 9,990, 9,998, 4, 14 advances 8, 6, 10', () => {
    expect([...read(9990, 9998, 4, 14).advance]).toEqual([8, 6, 10]);
  });
  it('a new meter that begins at 500: what ran in between is not known', () => {
    expect([...read(810, 820, 500, 510).advance]).toEqual([10, Number.NaN, 10]);
  });
  it('one zero among good readings is dropped: 810, 820, 0, 840 advances 10, 20', () => {
    const got = read(810, 820, 0, 840);
    expect([...got.advance]).toEqual([10, 20]);
    expect(got.notes[0]).toContain('fit neither neighbour');
  });
});
