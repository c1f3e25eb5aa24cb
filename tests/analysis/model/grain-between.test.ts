import { describe, expect, it } from 'vitest';
import { betweenCablesSd, binEndSd, nearestBetween } from '../../../src/analysis/model/grain-between.ts';

const between = { filled: { mean: 0, sd: 0.0015 }, aired: { mean: 0.001, sd: 0.002 } };
const evenAir = { ...between, aired: { mean: 0, sd: 0.002 } };
const loads = (wb: number) => ({ wb, sd: 0.003 });

describe('grain between the cables', () => {
  it('leaves 0.15 point open beside four cables', () => {
    const cables = Array.from({ length: 4 });
    expect(betweenCablesSd({ cables } as unknown as Parameters<typeof betweenCablesSd>[0])).toBeCloseTo(0.0015, 12);
  });

  it('is what its air makes of it where no loads tell', () => {
    expect(nearestBetween(between, 0.19, 0.15, { start: null, end: null })).toBeCloseTo(0.001, 12);
  });

  it('is told by the loads in, within what both leave open: of 0.4 point a fifth, 0.0225 of 0.0225 + 0.09', () => {
    const found = nearestBetween(between, 0.19, 0.15, { start: loads(0.194), end: null });
    expect(found).toBeCloseTo(0.001 + 0.2 * 0.004, 9);
  });

  it('is told by the loads out, filling and air together: of 0.4 point 0.0625 of 0.0625 + 0.09', () => {
    const found = nearestBetween(evenAir, 0.19, 0.15, { start: null, end: loads(0.154) });
    expect(found).toBeCloseTo(0.004 * (0.0625 / 0.1525), 9);
  });
});

describe('how sure the moisture of the bin at the end is', () => {
  // One value that moves start and end by 0.3 point, its standard error; then the rows of loads in, loads out and hand samples.
  const slopes = [Float64Array.of(1, 0, 0, 0)];
  const sdOf = (start: number | null, end: number | null) =>
    100 *
    binEndSd(slopes, [0.003], [0.003], evenAir, {
      start: start === null ? null : loads(start),
      end: end === null ? null : loads(end),
    });

  it('joins fit, filling and air: 0.3, 0.15 and 0.2 point', () => {
    expect(sdOf(null, null)).toBeCloseTo(Math.hypot(0.3, 0.15, 0.2), 6);
  });

  it('takes loads in for fit and filling at once: 0.1125 beside 0.09 leave 0.05, the air 0.04', () => {
    expect(sdOf(0.19, null)).toBeCloseTo(Math.sqrt(0.05 + 0.04), 6);
  });

  it('takes loads out for all three: 0.1525 beside 0.09', () => {
    expect(sdOf(null, 0.15)).toBeCloseTo((1 / 0.1525 + 1 / 0.09) ** -0.5, 6);
  });
});
