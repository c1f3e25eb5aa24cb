import { describe, expect, it } from 'vitest';
import { behindUnreadWhy, blindWhy, brokenOffWhy } from '../../../src/analysis/fronts/blind-why.ts';
import type { FanAxis } from '../../../src/analysis/fronts/fan-axis.ts';
import { fanHourCurve } from '../../../src/analysis/fronts/fan-hour-curve.ts';
import { HOUR_MS } from './invented-bin.ts';

/** Of a fan that never rests; looked at up to 60 fan hours. */
const told = (readings: [fanHour: number, tempC: number][], sign: 1 | -1 = -1) => {
  const hours = Float64Array.from(readings, ([hour]) => hour);
  const times = hours.map((hour) => hour * HOUR_MS);
  const curve = fanHourCurve(
    hours,
    times,
    Float64Array.from(readings, ([, tempC]) => tempC),
  );
  return blindWhy(curve, { searchH: 60, lengthH: 90 } as FanAxis, sign);
};

// By hand; a front is 3 K at least (the season format), a gap over 12 fan hours is one too wide.
describe('a sensor that shows no front', () => {
  it('saw that none came, where it was read all the time or stood alike on both sides of a gap', () => {
    expect(told(Array.from({ length: 31 }, (_, i) => [2 * i, 20]))).toBeNull();
    expect(
      told([
        ...([
          [0, 20],
          [10, 20],
        ] as [number, number][]),
        [40, 19],
        [50, 19],
        [60, 19],
      ]),
    ).toBeNull();
    expect(
      told([
        [0, 20],
        [11, 20],
        [22, 12],
        [33, 12],
        [44, 12],
        [55, 12],
      ]),
    ).toBeNull();
  });
  it('may have been passed in a gap over which it cooled', () => {
    expect(
      told([
        [0, 20],
        [10, 20],
        [40, 14],
        [50, 14],
        [60, 14],
      ]),
    ).toMatch(/lacking for 30 fan hours/);
  });
  it('was not passed by a cooling front in a gap over which it warmed, but by a warming one perhaps', () => {
    const readings: [number, number][] = [
      [0, 14],
      [10, 14],
      [40, 20],
      [50, 20],
      [60, 20],
    ];
    expect(told(readings, -1)).toBeNull();
    expect(told(readings, 1)).toMatch(/lacking for 30 fan hours/);
  });
  it('may have been passed after its log ended', () => {
    expect(
      told([
        [0, 20],
        [10, 20],
        [20, 20],
        [30, 20],
      ]),
    ).toMatch(/lacking for 30 fan hours/);
    expect(
      told([
        [0, 20],
        [10, 20],
        [20, 20],
        [30, 20],
        [40, 20],
        [50, 20],
      ]),
    ).toBeNull();
  });
  it('is asked only for what it lacks while the front is looked for', () => {
    expect(
      told([
        [-40, 25],
        [5, 20],
        [15, 20],
        [25, 20],
        [35, 20],
        [45, 20],
        [55, 20],
      ]),
    ).toBeNull();
    expect(
      told([
        [-40, 25],
        [15, 20],
        [25, 20],
        [35, 20],
        [45, 20],
        [55, 20],
      ]),
    ).toMatch(/lacking for 15 fan hours/);
  });
});

describe('a front whose readings break off', () => {
  const axis = { searchH: 60, lengthH: 90 } as FanAxis;
  const curveOf = (hours: number[], tempAt: (hour: number) => number) =>
    fanHourCurve(
      Float64Array.from(hours),
      Float64Array.from(hours, (hour) => hour * HOUR_MS),
      Float64Array.from(hours, tempAt),
    );
  const hourly = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);
  /** From 20 h on it falls by 0.2 K an hour, from 40 h on by `late`. */
  const falling = (late: number) => (hour: number) =>
    20 - 0.2 * Math.min(20, Math.max(0, hour - 20)) - late * Math.max(0, hour - 40);

  it('amid a change as steep as any before is not dated: a steeper one may have come', () => {
    const why = (late: number) => brokenOffWhy(curveOf(hourly(0, 48), falling(late)), axis, -1, 0.2);
    expect(why(0.3)).toMatch(/lacking for 42 fan hours/);
    expect(why(0.05)).toBeNull();
  });
  it('is not so where the log goes on, or the fan stopped', () => {
    expect(brokenOffWhy(curveOf(hourly(0, 90), falling(0.3)), axis, -1, 0.2)).toBeNull();
    const stopped = { searchH: 48, lengthH: 48 } as FanAxis;
    expect(brokenOffWhy(curveOf(hourly(0, 48), falling(0.3)), stopped, -1, 0.2)).toBeNull();
  });
  it('has no "behind" where less than half of its 24 fan hours was read, 6 to 30 after the steepest change', () => {
    const steady = () => 20;
    // Steepest at 20 h, so behind are 26 to 50 h.
    expect(behindUnreadWhy(curveOf(hourly(0, 39), steady), axis, 20)).toBeNull();
    expect(behindUnreadWhy(curveOf(hourly(0, 37), steady), axis, 20)).toMatch(/lacking for 13 of the fan hours/);
    expect(behindUnreadWhy(curveOf([...hourly(0, 30), ...hourly(45, 90)], steady), axis, 20)).toMatch(/lacking for 15/);
    // A fan that stopped at 34 h leaves no more than 26 to 34 h: "as far as the run goes".
    expect(behindUnreadWhy(curveOf(hourly(0, 34), steady), { ...axis, lengthH: 34 }, 20)).toBeNull();
  });
});
