import { describe, expect, it } from 'vitest';
import { placeSd } from '../../../src/analysis/airflow/cables-apart.ts';
import { inventedBin } from '../fronts/invented-bin.ts';

const flux = (cable: string, fluxKgM2S: number) => ({
  cable,
  fluxKgM2S,
  ownSd: 0.03,
  weatherSd: 0.02,
  pairs: 9,
  windows: 3,
});

describe('how places at one distance differ', () => {
  const bin = inventedBin([1, 2], 3, 'up', 6);
  const at = (...fromCentreM: number[]) => ({
    ...bin,
    cables: fromCentreM.map((one, i) => ({ ...bin.cables[i], fromCentreM: one })),
  });
  const [a, b, c] = bin.cables.map((one) => one.id);

  it('is assumed where no two cables hang at one distance', () => {
    expect(placeSd(at(0, 2, 4), [flux(a, 0.05), flux(b, 0.06), flux(c, 0.07)])).toBeCloseTo(0.07, 9);
  });
  it('follows the cables where some do', () => {
    // two at 4 m that differ by 20 %: their logarithms lie 0.0912 from the mean, squares 0.01662; of these their own timing, 3 % each,
    // makes (0.0009 + 0.0009) / 2; with 3 x 0.0049: (0.0147 + 0.01572) / 4
    expect(placeSd(at(0, 4, 4), [flux(a, 0.03), flux(b, 0.05), flux(c, 0.06)])).toBeCloseTo(0.0872, 4);
  });
  it('is not what their timing alone makes them differ by: the timing counts that already', () => {
    // 2 % apart, squares 0.0002 where timing makes 0.0009: nothing is left but what is assumed, sqrt(0.0147 / 4)
    expect(placeSd(at(0, 4, 4), [flux(a, 0.03), flux(b, 0.05), flux(c, 0.051)])).toBeCloseTo(0.0606, 4);
  });
});
