import { describe, expect, it } from 'vitest';
import { fanHourCurve } from '../../../src/analysis/fronts/fan-hour-curve.ts';
import { halfWay, halfWayBeside } from '../../../src/analysis/fronts/half-way.ts';

describe('half-way', () => {
  // Hourly readings from a day before the campaign to three days into it; 24 C ahead, 10 C behind, half-way 17 C.
  const hours = Float64Array.from({ length: 97 }, (_, i) => i - 24);
  const times = hours.map((hour) => Date.UTC(2024, 9, 5) + hour * 3_600_000);
  const told = (tempAt: (hour: number) => number) =>
    halfWay(fanHourCurve(hours, times, hours.map(tempAt)), 17, -1, 14, 24, 2, 72, 72);

  it('the front that passes between the readings of 13 and 14 fan hours is told there', () => {
    expect(told((hour) => (hour < 14 ? 24 : 10))).toBeCloseTo(13.5, 1);
  });
  it('a daily wave of the air before, past half-way for the first two hours, is not the front', () => {
    expect(told((hour) => (Math.abs(hour) < 2 ? 14 : hour < 14 ? 24 : 10))).toBeCloseTo(13.5, 1);
  });
  it('a sensor past half-way from the first and ever after was reached when the campaign began', () => {
    expect(told((hour) => (hour < 0 ? 24 : 10))).toBe(0);
  });
});

describe('half-way beside a steep change', () => {
  // Straight lines by hand: 26 C until 0 h, 22 C at 12 h, back at 25 C by 24 h, 20 C from 34 h on.
  const knots: [hour: number, tempC: number][] = [
    [-24, 26],
    [0, 26],
    [12, 22],
    [24, 25],
    [34, 20],
    [72, 20],
  ];
  const at = (hour: number) => {
    const i = knots.findIndex(([end]) => end >= hour);
    const [[a, from], [b, to]] = [knots[Math.max(0, i - 1)], knots[i]];
    return a === b ? from : from + ((hour - a) / (b - a)) * (to - from);
  };
  const hours = Float64Array.from({ length: 97 }, (_, i) => i - 24);
  const curve = fanHourCurve(
    hours,
    hours.map((hour) => hour * 3_600_000),
    hours.map(at),
  );

  it('is the fall that the steep change is part of, not an earlier one that came back', () => {
    // Half-way 23 C: gone through at 9 h in the first fall, at 16 h on the way back, at 28 h in the steepest, 24 to 34 h.
    expect(halfWayBeside(curve, 23, -1, 29, 72, 72)).toBeCloseTo(28, 1);
    expect(halfWayBeside(curve, 23, -1, 6, 72, 72)).toBeCloseTo(9, 1);
  });
  it('is 0 where the temperature stood beyond since the campaign began, null where it never gets there', () => {
    expect(halfWayBeside(curve, 27, -1, 29, 72, 72)).toBe(0);
    expect(halfWayBeside(curve, 19, -1, 29, 72, 72)).toBeNull();
  });
});
