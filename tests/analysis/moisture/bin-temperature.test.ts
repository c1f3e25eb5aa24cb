import { describe, expect, it } from 'vitest';
import { binTemperature } from '../../../src/analysis/moisture/bin-temperature.ts';
import { DAY, makeBin, T0 } from './make-bin.ts';
import { BIN, CENTRE, RING, SERIES, SPANS } from './two-cables.ts';

describe('binTemperature', () => {
  // 0.09 * (2.5/6 4 + 3.5/6 8) + 0.91 * (2.5/6 5 + 3.5/6 10) = 0.09 * 6.33333 + 0.91 * 7.91667 = 7.774167
  it('weighs as moisture does', () => {
    const ends = [4, 8, 5, 10];
    const series = SERIES.map((one, i) => ({
      ...one,
      moistureWb: one.moistureWb.map(() => Number.NaN),
      tempC: one.tempC.map((_, hour) => (hour < 100 ? 20 : ends[i])),
    }));
    const told = binTemperature(BIN, series, SPANS);
    expect(told.start.value).toBeCloseTo(20, 9);
    expect(told.end.value).toBeCloseTo(7.774167, 5);
    expect(told.why).toBeNull();
  });

  it('is withheld when the log begins long after filling', () => {
    const bin = makeBin([CENTRE, RING], { filledMs: T0 - 30 * DAY });
    const told = binTemperature(bin, SERIES, SPANS);
    expect(told.start.value).toBeNull();
    expect(told.why).toContain('30 days');
    expect(told.end.value).toBe(10);
    // Without a fan log the fan hours in between are not known, and not 0.
    expect(binTemperature(bin, SERIES, null).why).toBe(
      'The first believable temperatures come 30 days after filling, and no fan log tells what happened in between.',
    );
  });
});
