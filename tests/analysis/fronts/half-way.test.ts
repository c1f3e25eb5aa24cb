import { describe, expect, it } from 'vitest';
import { fanHourCurve } from '../../../src/analysis/fronts/fan-hour-curve.ts';
import { halfWay } from '../../../src/analysis/fronts/half-way.ts';

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
