import { describe, expect, it } from 'vitest';
import type { Bearing } from '../../../src/analysis/airflow/bearings.ts';
import { borneOut, sureEnough } from '../../../src/analysis/airflow/sure-enough.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { oneSystem } from '../../../src/report/one-system.ts';
import { Units } from '../../../src/report/units.ts';

const parts = [
  { cause: 'timing from sensor to sensor', relSd: 0.05 },
  { cause: 'moisture of the grain', relSd: 0.12 },
];
const one = [{ at: 0, weight: 1 }];
/** Another measure: the true airflow lies about `flowM3S`, sd of the logarithm. */
const about = (flowM3S: number, sd: number): Bearing => ({
  name: 'another measure',
  at: (truth) => Math.exp(-((Math.log(truth / flowM3S) / sd) ** 2) / 2),
});
const front = (sd: number, answers: readonly { at: number; weight: number }[] = one) => ({
  rangeM3S: estimate(1.2, 1, 1.55),
  errors: { answers, sd },
  parts,
});

describe('the chance that an airflow is more than 20 % off', () => {
  /**
   * 1.2 told is 20 % over a truth of 1.0 and 20 % under one of 1.5: logarithms -0.1823 and 0.2231 from it. With a standard error of
   * 0.1 these are 1.823 and 2.231: 3.41 and 1.28 % of the normal distribution lie beyond (tables), together 4.7 %; with 0.11,
   * 1.657 and 2.029: 4.87 and 2.12 %, 7.0 %.
   */
  it('is that of its errors, beyond both ends', () => {
    expect(borneOut(1.2, { answers: one, sd: 0.1 }, [])!.chance).toBeCloseTo(0.047, 2.5);
    expect(borneOut(1.2, { answers: one, sd: 0.11 }, [])!.chance).toBeCloseTo(0.07, 2.5);
  });
  it('is let pass up to one in twenty-five', () => {
    // with 0.095 the ends lie 1.919 and 2.349 of it away: 2.75 and 0.94 %, 3.7 %
    expect(sureEnough(front(0.095), [], 300).value).toBeCloseTo(1.2, 9);
    expect(sureEnough(front(0.1), [], 300).value).toBeNull();
  });
  it('falls where another measure agrees and rises where it does not, with the number as it was', () => {
    // 0.11 and as unsure a measure that says the same: 0.11 / sqrt(2) = 0.0778; the ends lie 2.34 and 2.87 of it away: 0.96 + 0.21 %
    const agreed = borneOut(1.2, { answers: one, sd: 0.11 }, [about(1.2, 0.11)])!;
    expect(agreed.chance).toBeCloseTo(0.0117, 2.5);
    expect(agreed.flowM3S.value).toBeCloseTo(1.2, 9);
    // 1.645 x 0.0778 = 0.128
    expect(agreed.flowM3S.interval![0]).toBeCloseTo(1.2 * Math.exp(-0.128), 1.9);
    expect(agreed.flowM3S.interval![1]).toBeCloseTo(1.2 * Math.exp(0.128), 1.9);
    expect(sureEnough(front(0.11), [about(1.2, 0.11)], 300).value).toBeCloseTo(1.2, 9);
    // 0.095 alone would pass; one that says 1.2 / e^0.3: by their weights the truth lies 0.142 below, give or take 0.0689,
    // and 20 % is 0.182 away: 0.58 of it, 28 %
    const parted = borneOut(1.2, { answers: one, sd: 0.095 }, [about(1.2 * Math.exp(-0.3), 0.1)])!;
    expect(parted.flowM3S.value).toBeCloseTo(1.2, 9);
    expect(parted.chance).toBeCloseTo(0.28, 2);
    expect(sureEnough(front(0.095), [about(1.2 * Math.exp(-0.3), 0.1)], 300).why).toContain(
      'Against it speaks another measure.',
    );
  });
  it('another measure chooses between published answers', () => {
    // Two answers 20 % apart, one counting twice; a measure good to 5 % that sides with the rarer one.
    const answers = [
      { at: -0.2 / 3, weight: 2 / 3 },
      { at: 0.4 / 3, weight: 1 / 3 },
    ];
    const alone = borneOut(1.2, { answers, sd: 0.05 }, [])!;
    expect(alone.flowM3S.value).toBeCloseTo(1.2, 9);
    const sided = borneOut(1.2, { answers, sd: 0.05 }, [about(1.2 * Math.exp(0.4 / 3), 0.05)])!;
    // by Bayes: of the rarer e^0, of the other e^(-0.2^2 / (4 x 0.05^2)) = e^-4 = 0.0183, twice: 0.035 of the whole
    expect(Math.log(sided.flowM3S.value! / 1.2)).toBeCloseTo(0.4 / 3 - 0.2 * (0.0366 / 1.0366), 3);
    expect(sided.chance).toBeLessThan(alone.chance);
  });
  it('nothing is told where no airflow goes with what was measured', () => {
    const none: Bearing = { name: 'x', at: () => 0 };
    expect(borneOut(1.2, { answers: one, sd: 0.1 }, [none])).toBeNull();
    expect(sureEnough(front(0.1), [none], 300).value).toBeNull();
  });
});

describe('an airflow that is not shown', () => {
  it('tells its interval, in both units, and the largest doubt', () => {
    // by hand: 1 m3/s over 300 m3 is 1/300 per second, x 60 x 1.2445 = 0.249 cfm/bu; 1.55 m3/s 0.386
    expect(sureEnough(front(0.2), [], 300).why).toBe(
      'Fronts leave 1,000 to 1,600 L/s (0.25 to 0.39 cfm/bu) open: any one number could be more than 20 % off. The largest doubt: moisture of the grain.',
    );
  });
  it('stands in the unit of the columns beside which a reader of SI pages finds it', () => {
    const said = oneSystem(sureEnough(front(0.2), [], 300).why ?? '', 'si');
    expect(said).toContain(`1,600 ${new Units('si', 'USD', 'UTC').unit('airflow')} open`);
  });
  it('keeps another reason', () => {
    expect(sureEnough({ rangeM3S: withheld('No cable.'), errors: null, parts: [] }, [], 300).why).toBe('No cable.');
  });
});
