import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binSpans } from '../../../src/analysis/fan/bin-spans.ts';
import {
  cumulativeFanHours,
  fanHoursBetween,
  momentOfFanHour,
  onAt,
  startsOf,
  stillHoursAt,
  unknownHoursBetween,
} from '../../../src/analysis/fan/spans.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans } from '../../../src/analysis/types.ts';

const H = 3_600_000;

/** `[[hours, state], …]` from hour 0 on; power 1000 W while on. */
function spansOf(parts: readonly (readonly [number, number])[], fromH = 0): FanSpans {
  let at = fromH * H;
  const startMs: number[] = [];
  const endMs: number[] = [];
  for (const [hours] of parts) {
    startMs.push(at);
    at += hours * H;
    endMs.push(at);
  }
  return {
    startMs: Float64Array.from(startMs),
    endMs: Float64Array.from(endMs),
    state: Uint8Array.from(parts, ([, state]) => state),
    powerW: Float64Array.from(parts, ([, s]) => (s === FAN_ON ? 1000 : s === FAN_OFF ? 0 : Number.NaN)),
  };
}

// off 0-2 h, on 2-5 h, off 5-6 h, unknown 6-8 h, off 8-10 h, on 10-11 h
const six = spansOf([
  [2, FAN_OFF],
  [3, FAN_ON],
  [1, FAN_OFF],
  [2, FAN_UNKNOWN],
  [2, FAN_OFF],
  [1, FAN_ON],
]);
const hours = (...list: number[]) => Float64Array.from(list, (h) => h * H);

describe('fan spans, by hand', () => {
  it('counts on hours in a window: 4 to 10.5 h holds 4-5 and 10-10.5 = 1.5 h', () => {
    expect(fanHoursBetween(six, 4 * H, 10.5 * H)).toBe(1.5);
    expect(fanHoursBetween(six, -5 * H, 50 * H)).toBe(4);
    expect(unknownHoursBetween(six, 7 * H, 50 * H)).toBe(1);
    expect(startsOf(six)).toBe(2);
  });
  it('knows the state at a moment, and nothing outside the log', () => {
    expect([-1, 0, 2, 4.99, 5, 7, 10, 11].map((h) => onAt(six, h * H))).toEqual([2, 0, 1, 1, 0, 2, 1, 2]);
  });
  it('sums fan hours in any order of times', () => {
    expect([...cumulativeFanHours(six, hours(-1, 1, 3, 5, 9, 10.5, 20, 3, 0))]).toEqual([0, 0, 1, 3, 3, 3.5, 4, 1, 0]);
  });
  it('tells how long the air stood still', () => {
    const still = [...stillHoursAt(six, hours(1, 3, 5.5, 7, 9, 10.5, 12, 5.25))];
    expect(still).toEqual([Infinity, 0, 0.5, Number.NaN, Number.NaN, 0, Number.NaN, 0.25]);
  });
  it('finds the moment of a fan hour: 1.5 on hours from hour 4 end at 10.5 h', () => {
    expect(momentOfFanHour(six, 4 * H, 1.5)).toBe(10.5 * H);
    expect(momentOfFanHour(six, 4 * H, 3)).toBeNull();
    expect(momentOfFanHour(six, 4 * H, 0)).toBe(4 * H);
  });
  it('says nothing of an empty log', () => {
    const none = spansOf([]);
    expect(onAt(none, 0)).toBe(FAN_UNKNOWN);
    expect([...cumulativeFanHours(none, hours(1))]).toEqual([0]);
    expect([...stillHoursAt(none, hours(1))]).toEqual([Number.NaN]);
    expect(momentOfFanHour(none, 0, 1)).toBeNull();
  });
});

describe('a bin of two fans, by hand', () => {
  it('is on while any runs, unknown while none is known to run and one is unknown', () => {
    const other = spansOf(
      [
        [3, FAN_ON],
        [5, FAN_OFF],
      ],
      1,
    ); // on 1-4 h, off 4-9 h, no log before and after
    const bin = binSpans([six, other]);
    // 0-1 six off, other not logged: unknown; 1-2 on 1 kW; 2-4 on 2 kW; 4-5 on 1 kW; 5-6 off; 6-8 unknown;
    // 8-9 off; 9-10 six off, other not logged: unknown; 10-11 on 1 kW
    expect([...bin.startMs].map((ms) => ms / H)).toEqual([0, 1, 2, 4, 5, 6, 8, 9, 10]);
    expect([...bin.state]).toEqual([2, 1, 1, 1, 0, 2, 0, 2, 1]);
    expect([...bin.powerW]).toEqual([NaN, 1000, 2000, 1000, 0, NaN, 0, NaN, 1000]);
    expect(fanHoursBetween(bin, 0, 20 * H)).toBe(5);
    expect(startsOf(bin)).toBe(2);
  });
});

describe('fan spans, any log', () => {
  const log = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.constantFrom(FAN_OFF, FAN_ON, FAN_UNKNOWN)), {
      minLength: 1,
      maxLength: 20,
    })
    .map((parts) => spansOf(parts.map(([quarters, state]) => [quarters / 4, state] as const)));
  it('momentOfFanHour undoes fanHoursBetween', () => {
    fc.assert(
      fc.property(log, fc.double({ min: 0, max: 1, noNaN: true }), (spans, part) => {
        const end = spans.endMs[spans.endMs.length - 1];
        const all = fanHoursBetween(spans, 0, end);
        const moment = momentOfFanHour(spans, 0, part * all);
        expect(moment).not.toBeNull();
        expect(fanHoursBetween(spans, 0, moment as number)).toBeCloseTo(part * all, 6);
      }),
      { seed: 7 },
    );
  });
  it('one pass over sorted times equals a look at each', () => {
    fc.assert(
      fc.property(log, (spans) => {
        const end = spans.endMs[spans.endMs.length - 1];
        const times = Float64Array.from({ length: 60 }, (_, i) => (i / 50) * end - H);
        const sums = cumulativeFanHours(spans, times);
        const still = stillHoursAt(spans, times);
        times.forEach((ms, i) => {
          expect(sums[i]).toBeCloseTo(fanHoursBetween(spans, Number.NEGATIVE_INFINITY, ms), 9);
          const state = onAt(spans, ms);
          if (state === FAN_ON) expect(still[i]).toBe(0);
          if (state === FAN_UNKNOWN) expect(still[i]).toBeNaN();
          if (Number.isFinite(still[i]) && still[i] > 0) {
            expect(onAt(spans, ms - still[i] * H - 1)).toBe(FAN_ON);
            expect(fanHoursBetween(spans, ms - still[i] * H, ms)).toBeCloseTo(0, 6);
          }
        });
      }),
      { seed: 8 },
    );
  });
  it('a bin with one fan twice runs the same hours at twice the power', () => {
    fc.assert(
      fc.property(log, (spans) => {
        const bin = binSpans([spans, spans]);
        const end = spans.endMs[spans.endMs.length - 1];
        expect(fanHoursBetween(bin, 0, end)).toBeCloseTo(fanHoursBetween(spans, 0, end), 9);
        expect([...bin.powerW].every((w) => Number.isNaN(w) || w === 0 || w === 2000)).toBe(true);
      }),
      { seed: 9 },
    );
  });
});
