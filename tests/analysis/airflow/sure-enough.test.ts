import { describe, expect, it } from 'vitest';
import { sureEnough } from '../../../src/analysis/airflow/sure-enough.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';

const parts = [
  { cause: 'timing from sensor to sensor', relSd: 0.05 },
  { cause: 'moisture of the grain', relSd: 0.12 },
];

describe('an airflow that may be 20 % off', () => {
  // 1.2 told is 20 % over a truth of 1.0 and 20 % under one of 1.5: an interval within these holds no larger error.
  it('is shown while its interval leaves no room for more', () => {
    expect(sureEnough(estimate(1.2, 1.01, 1.49), parts, 300).value).toBe(1.2);
    expect(sureEnough(estimate(1.2, 0.99, 1.4), parts, 300).value).toBeNull();
    expect(sureEnough(estimate(1.2, 1.1, 1.51), parts, 300).value).toBeNull();
  });
  it('else tells its interval, in both units, and the largest doubt', () => {
    // by hand: 1 m3/s over 300 m3 is 1/300 per second, x 60 x 1.2445 = 0.249 cfm/bu; 1.5 m3/s 0.373
    expect(sureEnough(estimate(1.2, 1, 1.55), parts, 300).why).toBe(
      'Fronts leave 1 to 1.6 m³/s open (0.25 to 0.39 cfm/bu): any one number could be more than 20 % off. The largest doubt: moisture of the grain.',
    );
  });
  it('keeps another reason', () => {
    expect(sureEnough(withheld('No cable.'), parts, 300).why).toBe('No cable.');
  });
});
