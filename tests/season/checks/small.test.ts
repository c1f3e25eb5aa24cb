import { describe, expect, it } from 'vitest';
import { deadCurrent } from '../../../src/season/checks/dead-current.ts';
import { airAt, fanHistory, fanSamples, MOVING, STILL, UNKNOWN } from '../../../src/season/checks/fan-state.ts';
import { gapsOf } from '../../../src/season/checks/gaps.ts';
import { aboveGrain, grainDepthAt } from '../../../src/season/checks/grain-depth.ts';
import { outsideLimits } from '../../../src/season/checks/limits.ts';
import { meterFaults, meterLeaps } from '../../../src/season/checks/meters.ts';
import { placesOf, rosterOf } from '../../../src/season/checks/places.ts';
import { CHECK_RULES } from '../../../src/season/checks/rules.ts';
import { sameValueRuns } from '../../../src/season/checks/runs.ts';
import { trackOf } from '../../../src/season/checks/track.ts';
import { wrongShares } from '../../../src/season/checks/unit-fraction.ts';
import type { BinGrain } from '../../../src/season/season.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { HOUR, TYPICAL } from './made-bin.ts';
import { madeSeason } from './made-season.ts';

const grain = (given: Partial<BinGrain>): BinGrain => ({ ...madeSeason(TYPICAL).bins[0].grain, ...given });
const ones = (n: number) => new Uint8Array(n).fill(1);

describe('grain depth', () => {
  it('is nothing before the first dated depth and after unloading, and `filled` then says no more', () => {
    const filling = grain({
      depthSteps: [
        { fromMs: 100, depthM: 2 },
        { fromMs: 200, depthM: 5 },
      ],
      filledMs: 200,
      unloadedMs: 300,
    });
    expect([99, 100, 199, 200, 299, 300].map((t) => grainDepthAt(filling, t))).toEqual([0, 2, 2, 5, 5, 0]);
    expect(aboveGrain(filling, 2, [99, 100, 200, 300])).toEqual([0, 1, 3]);
  });

  it('takes a single depth from the day the bin was filled', () => {
    const single = grain({ depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 5 }], filledMs: 200 });
    expect([199, 200].map((t) => grainDepthAt(single, t))).toEqual([0, 5]);
    expect(aboveGrain(grain({ depthSteps: [] }), 2, [0, 1])).toEqual([]);
  });
});

describe('impossible values', () => {
  it('are outside what grain and air can be; missing and left-out ones are none', () => {
    const values = [20, 85, -127, Number.NaN, -50, 70, 999];
    expect(outsideLimits('tempC', values, [1, 1, 1, 0, 1, 1, 0])).toEqual([1, 2]);
    expect(outsideLimits('moistureWb', [0, 0.03, 0.15, 0.45, 0.46], ones(5))).toEqual([0, 4]);
    expect(outsideLimits('rh', [0, 0.5, 1.05, 1.06], ones(4))).toEqual([0, 3]);
  });
});

describe('gaps', () => {
  it('are longer than three usual intervals, and count what is lacking', () => {
    const hours = [0, 1, 2, 5, 6, 7, 12, 13, 14];
    const times = Float64Array.from(hours, (h) => h * HOUR);
    expect(gapsOf(times, null)).toEqual([{ fromMs: 7 * HOUR, toMs: 12 * HOUR, lacking: 4 }]);
    // The log around went on for ten hours more: ten readings are lacking at the end.
    expect(gapsOf(times, { fromMs: 0, toMs: 24 * HOUR })[1]).toEqual({
      fromMs: 14 * HOUR,
      toMs: 24 * HOUR,
      lacking: 10,
    });
    expect(gapsOf([0], null)).toEqual([]);
  });
});

describe('running meters', () => {
  it('were replaced where they jump ahead by more than can be counted, and go on from there', () => {
    // Hours of running, one reading an hour; the new meter shows 812, then 40 where nothing was read for two days.
    const timeMs = [0, 1, 2, 3, 4, 52, 53].map((h) => h * 3_600_000);
    const none = new Set<number>();
    expect(meterLeaps([10, 11, 12, 812, 813, 853, 854], timeMs, 1 / 3600, none)).toEqual([3]);
    expect(meterLeaps([10, 11, 12, 13, 14, 62, 63], timeMs, 1 / 3600, none)).toEqual([]);
    // A high reading that slipped is no new meter.
    expect(meterLeaps([10, 11, 12, 812, 14, 60, 61], timeMs, 1 / 3600, new Set([3]))).toEqual([]);
  });
  it.each([
    [0.1, 5, 1200.03],
    [1, 15, 500.97],
  ])(
    'a dial of %d h read every %d min moves by more than the clock after a rest, and has not leapt',
    (dial, min, first) => {
      // Twelve hours of each day, from the third hour on; the rest is longer than any look back.
      const count = (5 * 24 * 60) / min;
      const minutes = Float64Array.from({ length: count }, (_, i) => i * min);
      let ran = first;
      const hours = minutes.map((at) => {
        const hour = (at / 60) % 24;
        if (hour >= 3 && hour < 15) ran += min / 60;
        return Math.floor(ran / dial + 1e-9) * dial;
      });
      const timeMs = minutes.map((at) => at * 60_000);
      expect(meterLeaps(hours, timeMs, 1.02 / 3600, new Set())).toEqual([]);
      const other = hours.map((one, i) => (i >= count / 2 ? one + 50 : one));
      expect(meterLeaps(other, timeMs, 1.02 / 3600, new Set())).toEqual([count / 2]);
    },
  );
  it('were reset where they jump back for good', () => {
    expect(meterFaults([10, 11, 12, 0, 1, 2, 3], ones(7))).toEqual({ resets: [3], slips: [] });
    expect(meterFaults([10, 10, 10, 4, 4, 4, 5], ones(7))).toEqual({ resets: [3], slips: [] });
  });

  it('slipped where they go on as before', () => {
    expect(meterFaults([10, 11, 12, 0, 14, 15, 16], ones(7))).toEqual({ resets: [], slips: [3] });
    expect(meterFaults([10, 11, 12, 900, 14, 15, 16], ones(7))).toEqual({ resets: [], slips: [3] });
    expect(meterFaults([10, 11, 12, 13], ones(4))).toEqual({ resets: [], slips: [] });
  });
});

describe('a dead current sensor', () => {
  const times = Float64Array.from({ length: 100 }, (_, i) => i * HOUR);
  it('reads nothing for long while the fan works', () => {
    const current = Float64Array.from(times, (_, i) => (i < 50 ? 20 : 0));
    expect(deadCurrent(times, current, ones(100), 20)).toEqual([{ first: 50, last: 99, hours: 49 }]);
  });
  it('is none where the fan stood, or after single readings at a start', () => {
    const current = Float64Array.from(times, (_, i) => (i % 10 === 0 ? 0 : 20));
    expect(deadCurrent(times, current, ones(100), 20)).toEqual([]);
    expect(deadCurrent(times, new Float64Array(100), new Uint8Array(100), 20)).toEqual([]);
  });
});

describe('what the fan did', () => {
  const fan = madeSeason(TYPICAL).fans[0];
  const nothing = (n: number) => new Float64Array(n).fill(Number.NaN);
  const log = (n: number) => ({
    time: Float64Array.from({ length: n }, (_, i) => i * HOUR),
    current_a: nothing(n),
    power_w: nothing(n),
    energy_j: nothing(n),
    on: nothing(n),
    run_s: nothing(n),
  });

  it('is told by current, state or meter', () => {
    const current = { ...log(4), current_a: Float64Array.of(0.2, 21, 20, 0.1) };
    expect([...fanSamples(fan, current)]).toEqual([STILL, MOVING, MOVING, STILL]);
    const run = { ...log(4), run_s: Float64Array.of(0, 0, 3600, 3600) };
    expect([...fanSamples(fan, run)]).toEqual([STILL, MOVING, STILL, UNKNOWN]);
    // Never near the nameplate's 22 A: it never ran.
    expect([...fanSamples(fan, { ...log(3), current_a: Float64Array.of(0.1, 0.9, 0.2) })]).toEqual([
      STILL,
      STILL,
      STILL,
    ]);
  });

  it('is still only three hours after the stop, and unknown in a hole', () => {
    const time = Float64Array.from([0, 1, 2, 3, 4, 5, 6, 20], (h) => h * HOUR);
    const state = Uint8Array.of(STILL, MOVING, STILL, STILL, STILL, STILL, STILL, STILL);
    const at = airAt(
      [0.5, 1.5, 3, 4.9, 5.5, 15].map((h) => h * HOUR),
      [fanHistory(time, state)],
    );
    expect([...at]).toEqual([STILL, MOVING, MOVING, MOVING, STILL, UNKNOWN]);
    expect([...airAt([0], [null])]).toEqual([UNKNOWN]);
    expect([...airAt([0], [])]).toEqual([STILL]);
  });
});

describe('runs, shares and places', () => {
  it('a run goes over missing values and over readings that the loader flagged', () => {
    const times = Float64Array.from({ length: 60 }, (_, i) => i * HOUR);
    const values = Float64Array.from(times, (_, i) => (i === 20 ? Number.NaN : i === 30 ? 99 : 7));
    const flags = Uint8Array.from(times, (_, i) => (i === 30 ? FLAGS.duplicate : 0));
    const runs = sameValueRuns(trackOf(times, values, flags), 48 * HOUR, 12);
    expect(runs.map(({ first, last, readings }) => [first, last, readings])).toEqual([[0, 59, 58]]);
  });

  it('six hundredfold values in a row are a unit, five are not', () => {
    expect(wrongShares([0.15, ...Array(6).fill(0.0015), 0.15], ones(8), 'moisture')).toEqual([1, 2, 3, 4, 5, 6]);
    expect(wrongShares([0.15, ...Array(5).fill(15), 0.15], ones(7), 'moisture')).toEqual([]);
    expect(wrongShares(Array(6).fill(65), ones(6), 'rh')).toHaveLength(6);
  });

  it('name the largest place that an event fills', () => {
    const all = [1, 2].flatMap((c) => [1, 2, 3].map((sensor) => ({ bin: 'B1', cable: `C${c}`, sensor })));
    const at = (one: (typeof all)[number]) => ({ ...one, fromMs: 0, toMs: 9, cells: 2 });
    const roster = rosterOf(all);
    expect(placesOf(all.map(at), roster, 1).map(({ where, cells }) => [where, cells])).toEqual([['B1', 12]]);
    expect(placesOf(all.slice(0, 5).map(at), roster, 1).map((one) => one.where)).toEqual([
      'B1 C1',
      'B1 C2 sensors 1 and 2',
    ]);
    expect(placesOf([at(all[0]), { ...at(all[1]), toMs: 90 }], roster, 1).map((one) => one.where)).toEqual([
      'B1 C1 sensor 1',
      'B1 C1 sensor 2',
    ]);
  });
});

describe('the rules as printed', () => {
  it('cover every flag and say the constants that they name', () => {
    const flags = new Set(CHECK_RULES.map((one) => one.flag));
    for (const flag of [...Object.keys(FLAGS), 'gap', 'silent', 'meter-reset']) expect(flags).toContain(flag);
    for (const { rule, title } of CHECK_RULES) {
      expect(title).not.toBe('');
      expect(rule).toMatch(/^[A-Z].*\.$/);
      expect(rule).not.toMatch(/undefined|NaN|\[object/);
    }
  });
});
