import { describe, expect, it } from 'vitest';
import { overdryingBushels } from '../../../src/analysis/moisture/overdrying.ts';
import { estimate } from '../../../src/base/estimate.ts';

const exactly = (kg: number) => estimate(kg, kg, kg);

/** Percent of the weight at base moisture that is lost by ending at `end` percent. */
function lossPct(end: number, base: number): number {
  const atBase = 1 / (1 - base / 100);
  return (
    (100 * overdryingBushels(exactly(1), base / 100, estimate(end / 100, end / 100, end / 100), 1).value!) / atBase
  );
}

describe('over-drying against published weights', () => {
  // University of Nebraska-Lincoln, CropWatch, Plan Harvest to Deliver Soybeans at the Optimum Moisture, 14 September 2017:
  // loss of saleable weight against 13 %. Printed to 0.01 (12, 11, 8 %) and 0.1 (10, 9 %).
  it.each([
    [12, 1.14, 0.005],
    [11, 2.25, 0.005],
    [10, 3.3, 0.05],
    [9, 4.4, 0.05],
    [8, 5.43, 0.008], // 1 - 87/92 = 5.435 %: the page cuts where it should round
  ])('soybeans at %d %% against 13 %%: %d %%', (end, expected, tolerance) => {
    expect(Math.abs(lossPct(end, 13) - expected)).toBeLessThanOrEqual(tolerance);
  });

  // Water shrink 100 (Mi - Mf)/(100 - Mf): National Corn Handbook NCH-61, 25 to 12 % is 14.77 %. Seen from the other side, corn
  // sold at a base of 25 % that ended at 12 % loses just that share of its weight.
  it('is the same sum as the water shrink', () => {
    expect(Math.abs(lossPct(12, 25) - 14.77)).toBeLessThan(0.01);
  });

  it('turns the interval of the moisture round: drier loses more', () => {
    const lost = overdryingBushels(exactly(1000), 0.15, estimate(0.14, 0.13, 0.16), 25);
    expect(lost.interval).toEqual([0, (1000 / 0.85 - 1000 / 0.87) / 25]);
    expect(lost.value).toBeCloseTo((1000 / 0.85 - 1000 / 0.86) / 25, 9);
  });
});
