import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { flowDoubts } from '../../../src/analysis/model/flow-checks.ts';
import { type Estimate, estimate, withheld } from '../../../src/base/estimate.ts';

/** So many standard errors of a logarithm about a value. */
const about = (value: number, sd: number) =>
  estimate(value, value * Math.exp(-1.6449 * sd), value * Math.exp(1.6449 * sd));
const NONE = withheld('not logged');
const logWith = (byPressure: Estimate, byFanCurve: Estimate, byFront: Estimate) =>
  ({ review: { airflow: { byPressure, byFanCurve, byFront } } }) as BinLog;
const doubtsOf = (byPressure: Estimate, byFanCurve: Estimate, byFront: Estimate = NONE) =>
  flowDoubts(logWith(byPressure, byFanCurve, byFront), about(1, 0.1), about(1, 0.1));

describe('the airflow of the grain against the other ways', () => {
  it('is doubted where the 95 % intervals of grain and static pressure lie apart', () => {
    // By hand: 1.96 times 0.1 and 0.2 are 0.588 apart in logarithms; 1.645 times are 0.494.
    expect(doubtsOf(about(Math.exp(0.58), 0.2), NONE)).toEqual([]);
    expect(doubtsOf(about(Math.exp(-0.58), 0.2), NONE)).toEqual([]);
    expect(doubtsOf(about(Math.exp(0.6), 0.2), NONE)).toHaveLength(1);
    expect(doubtsOf(about(Math.exp(-0.6), 0.2), NONE)[0].why).toContain('1.82 of that by static pressure');
    expect(doubtsOf(NONE, NONE)).toEqual([]);
  });

  it('is doubted where it does not reach what the fans deliver by their curves', () => {
    expect(doubtsOf(NONE, about(Math.exp(0.49), 0.2))).toEqual([]);
    expect(doubtsOf(NONE, about(Math.exp(0.5), 0.2))[0].why).toContain('0.61 of the air that the fans deliver');
  });

  it('is doubted beyond half to twice of what fronts or pressure tell, unless these leave as much open', () => {
    expect(doubtsOf(NONE, NONE, about(1.9, 0.1))).toEqual([]);
    expect(doubtsOf(NONE, NONE, about(2.1, 0.1))[0].why).toContain('0.48 of that by the fronts; half to twice');
    expect(doubtsOf(NONE, NONE, about(0.45, 0.1))[0].why).toContain('2.22 of that by the fronts; half to twice');
    // 27 Pa on a gauge that is 12 Pa off at most: known to a factor of two and more.
    expect(doubtsOf(about(0.45, 0.45), NONE)).toEqual([]);
    expect(doubtsOf(about(0.45, 0.35), NONE).map((one) => one.why.slice(0, 44))).toEqual([
      'The fitted airflow is 2.22 of that by static',
    ]);
  });

  it('is doubted where it reaches beyond 30 % on either side', () => {
    const log = logWith(NONE, NONE, NONE);
    expect(flowDoubts(log, about(1, 0.19), about(1, 0.19))).toEqual([]);
    expect(flowDoubts(log, about(1, 0.2), about(1, 0.2))).toHaveLength(1);
  });
});
