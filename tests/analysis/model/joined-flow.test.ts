import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { joinedFlow } from '../../../src/analysis/model/joined-flow.ts';
import { type Estimate, estimate, withheld } from '../../../src/base/estimate.ts';

const logOf = (byPressure: Estimate, fromCentreM: readonly number[]) => {
  const cables = fromCentreM.map((one, i) => ({ id: `C${i + 1}`, fromCentreM: one }));
  return {
    bin: { diameterM: 10, cables },
    cables: cables.map(({ id }) => ({ cable: id })),
    review: { airflow: { byPressure } },
  } as unknown as BinLog;
};
const RING = [3, 3, 3, 3];
/** An interval of so many standard errors of a logarithm about 2 m3/s. */
const about2 = (sd: number) => estimate(2, 2 * Math.exp(-1.6449 * sd), 2 * Math.exp(1.6449 * sd));

describe('the airflow of a whole bin', () => {
  it('is that at the cables where no pressure was logged, as unsure as their places leave it', () => {
    // 11 % over the root of four cables are 5.5 %; with 4 % of the fit that is the root of 0.055 squared and 0.04 squared.
    const { mean, sd, place } = joinedFlow(logOf(withheld('no gauge'), RING), 0, 0.04);
    expect([mean, place]).toEqual([0, 0]);
    expect(sd).toBeCloseTo(Math.sqrt(0.055 ** 2 + 0.04 ** 2), 10);
  });

  it('is the mean of both, each by one over its variance, where static pressure tells it too', () => {
    // By hand: variances 0.055^2 + 0.048^2 = 0.005329 (0.073 squared) and 0.073^2: half and half, and the root of two surer.
    const { mean, sd } = joinedFlow(logOf(about2(0.073), RING), 0, 0.048);
    expect(mean).toBeCloseTo(Math.log(2) / 2, 4);
    expect(sd).toBeCloseTo(0.073 / Math.SQRT2, 4);
  });

  it('takes the middle of what static pressure leaves open, where its value stands at one end', () => {
    // Two sets of constants, 1 and 1.5 m3/s: the middle of the interval is the root of 0.9 times 1.65.
    const { mean } = joinedFlow(logOf(estimate(1, 0.9, 1.65), RING), Math.log(Math.sqrt(0.9 * 1.65)), 0.048);
    expect(mean).toBeCloseTo(Math.log(0.9 * 1.65) / 2, 10);
  });

  it('moves the bed of a whole bin by the part that is the place of the cables', () => {
    // As above: of a variance of 0.005329 the places have 0.003025.
    const { place } = joinedFlow(logOf(about2(0.073), RING), 0, 0.048);
    expect(place).toBeCloseTo((0.003025 / 0.005329) * (Math.log(2) / 2), 4);
  });

  it('stands beside what it is without the static pressure: cables in the core are not held against it as if they told the bin', () => {
    const { alone } = joinedFlow(logOf(about2(0.073), [0.5]), 0, 0.05);
    expect(alone.mean).toBeCloseTo(0.1, 10);
    expect(alone.sd).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.18 ** 2), 10);
  });

  it('is a tenth above that of a core that alone was seen, and much less sure', () => {
    const { mean, sd } = joinedFlow(logOf(withheld('no gauge'), [0.5]), 0, 0);
    expect(mean).toBeCloseTo(0.1, 10);
    expect(sd).toBeCloseTo(0.18, 10);
  });
});
