import { describe, expect, it } from 'vitest';
import { placeSd } from '../../../src/analysis/airflow/cables-apart.ts';
import { inventedBin } from '../fronts/invented-bin.ts';

const flux = (cable: string, fluxKgM2S: number) => ({ cable, fluxKgM2S, logSd: 0.03, pairs: 9, windows: 3 });

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
    // two at 4 m that differ by 20 %: their logarithms lie 0.0912 from the mean, squares 0.01662; with 3 x 0.0049: 0.03132 / 4
    expect(placeSd(at(0, 4, 4), [flux(a, 0.03), flux(b, 0.05), flux(c, 0.06)])).toBeCloseTo(0.0885, 4);
  });
});
