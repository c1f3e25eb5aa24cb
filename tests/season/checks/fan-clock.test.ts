import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { clockShift } from '../../../src/season/checks/fan-clock.ts';
import { airNow, fanHistory } from '../../../src/season/checks/fan-state.ts';
import { loadedSample } from '../../support/sample.ts';
import { make } from './made-bin.ts';
import { madeSeason, table, tablesOf, text } from './made-season.ts';

const HOUR = 3_600_000;
/** A fan that ran in the hours of `ran`, of 20 days by the hour; the plenum tells the truth. */
function shiftOf(ran: (hour: number) => boolean, loggedLater: number, wrong: readonly number[] = [], edgeH = 0.5) {
  const hours = Array.from({ length: 480 }, (_, h) => h);
  const time = Float64Array.from(hours, (h) => h * HOUR);
  const high = Uint8Array.from(hours, (h) => (ran(h) === !wrong.includes(h) ? 1 : 0));
  const log = fanHistory(
    time.map((ms) => ms + (loggedLater - edgeH) * HOUR),
    Uint8Array.from(hours, (h) => (ran(h) ? 1 : 0)),
  );
  return clockShift(time, high, (times) => airNow(times, [log]));
}
// 8 to 20 h a day, other hours each day.
const ragged = (h: number) => h % 24 >= (Math.floor(h / 24) * 5) % 11 && h % 24 < 13 + ((Math.floor(h / 24) * 7) % 6);
const nightly = (h: number) => h % 24 < 6;

describe('a fan log beside the pressure of the plenum', () => {
  it('that is stamped 6 hours late or 5 early would fit when moved by as much', () => {
    expect(shiftOf(ragged, 6)).toMatchObject({ hours: -6, misfitsShifted: 0 });
    expect(shiftOf(ragged, -5)).toMatchObject({ hours: 5, misfitsShifted: 0 });
    // Both logs on the full hour, where a start and a reading coincide.
    expect(shiftOf(ragged, -5, [], 0)?.hours).toBe(5);
    // Nightly runs look the same 24 hours on: the smaller shift is told. 6 h late: 12 wrong hours in each of 20 days but the first 6 h.
    expect(shiftOf(nightly, 6)).toMatchObject({ hours: -6, misfitsShifted: 0 });
  });

  it('that fits, or fits as badly whatever the shift, or is an hour off for a day, is left alone', () => {
    expect(shiftOf(ragged, 0)).toBeNull();
    // Noise: a fifth of the pressures is wrong at random places, and no shift takes it away.
    const noise = Array.from({ length: 480 }, (_, h) => h).filter((h) => (h * 7919) % 5 === 0);
    expect(shiftOf(ragged, 0, noise)).toBeNull();
    // One run in 20 days, logged 2 hours late: 4 hours contradict, as any start and stop may.
    expect(shiftOf((h) => h >= 100 && h < 150, 2)).toBeNull();
    expect(shiftOf(() => false, 6)).toBeNull();
  });

  it('with some noise in the pressure is found all the same', () => {
    const noise = Array.from({ length: 480 }, (_, h) => h).filter((h) => (h * 7919) % 31 === 0);
    expect(shiftOf(ragged, 6, noise)?.hours).toBe(-6);
  });
});

describe('in a season', () => {
  const made = make({ seed: 3, days: 90 });
  const hours = made.airMs.length;
  const season = madeSeason(made.options);
  const told = (laterH: number) => {
    const { findings, flags } = checkSeason(
      season,
      tablesOf(made, {
        plenum: table('plenum', hours, {
          time: made.airMs,
          bin: text(hours, 'B1'),
          temp_c: made.airC.map((tempC) => tempC + 1.5),
          rh: made.airRh.map((rh) => Math.round(rh * 90) / 100),
          static_pressure_pa: Float64Array.from(made.fanOn, (on) => (on ? 620 : 0)),
        }),
        fan: table('fan', hours, {
          time: made.airMs.map((ms) => ms + (laterH - 0.5) * HOUR),
          fan: text(hours, 'F1'),
          current_a: Float64Array.from(made.fanOn, (on) => on * 20),
        }),
      }),
    );
    expect(flags.fan.some((bits) => bits !== 0)).toBe(false);
    return findings.filter((one) => one.where === 'fan F1');
  };

  it('the finding tells the shift and what to write; nothing is flagged', () => {
    expect(told(0)).toEqual([]);
    const [late] = told(6);
    expect(late).toMatchObject({ kind: 'clock', binId: 'B1', cells: 0 });
    expect(late.text).toContain('if the fan ran 6 hours earlier than logged');
    // The season's site keeps UTC; what was read as 18:00 UTC was 12:00: the log is six hours east, of UTC+6 (signs turned in Etc/).
    expect(late.advice).toContain('`time_zone: Etc/GMT-6`');
    expect(late.advice).toContain('at fan.csv');
    expect(late.advice).toContain('`time_zone: Etc/GMT+6` at plenum.csv');
    expect(told(-5)[0].advice).toContain('`time_zone: Etc/GMT+5`');
  });
});

describe('the sample season', () => {
  // Its README: plenum-b2.csv keeps standard time while it is read as local time, an hour early under daylight saving.
  it('tells the plenum logger of B2 that keeps standard time, and no other clock', async () => {
    const { load } = await loadedSample('sorrel-fork');
    const told = load.findings.filter((one) => one.kind === 'clock' && one.where.startsWith('fan '));
    expect(told.map((one) => one.binId)).toEqual(['B2']);
    expect(told[0].text).toContain('if the fan ran 1 hour earlier than logged');
    expect(told[0].advice).toContain('`time_zone: local standard` at logs/plenum-b2.csv');
  });
});

describe('a current of exactly 0 A', () => {
  const made = make({ seed: 3, days: 30 });
  const hours = made.airMs.length;
  const season = madeSeason(made.options);
  const told = (pressurePa: number | null, columns: Record<string, Float64Array> = {}) =>
    checkSeason(
      season,
      tablesOf(made, {
        ...(pressurePa === null
          ? {}
          : {
              plenum: table('plenum', hours, {
                time: made.airMs,
                bin: text(hours, 'B1'),
                static_pressure_pa: new Float64Array(hours).fill(pressurePa),
              }),
            }),
        fan: table('fan', hours, {
          time: made.airMs,
          fan: text(hours, 'F1'),
          current_a: new Float64Array(hours),
          ...columns,
        }),
      }),
    ).findings.filter((one) => one.kind === 'silent' && one.where === 'fan F1');

  it('all season is a fan that never ran or a dead sensor; the plenum or a meter would tell', () => {
    const [alone] = told(null);
    expect(alone.text).toMatch(/exactly 0 A in all of 720 readings: either the fan never ran, or its sensor is dead/);
    expect(alone.text).toContain('Nothing logged tells which');
    expect(alone.advice).toMatch(/static pressure.*meter/);
    expect(told(2)[0].text).toContain('speaks for a fan that never ran');
    expect(told(600)[0].text).toContain('speaks for the sensor');
  });

  it('is not told where a state or a meter says the same beside it, or where it once reads more', () => {
    expect(told(null, { on: new Float64Array(hours) })).toEqual([]);
    expect(told(null, { current_a: new Float64Array(hours).fill(12, 5, 9) })).toEqual([]);
  });
});
