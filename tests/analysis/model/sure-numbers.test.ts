import { describe, expect, it } from 'vitest';
import { sureEnd, sureFlow } from '../../../src/analysis/model/sure-numbers.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';

describe('numbers of a fitted bed', () => {
  it('tell the airflow where its interval leaves no more than 12.5 % open on either side', () => {
    const narrow = estimate(2, 1.79, 2.24);
    expect(sureFlow(narrow, 150)).toBe(narrow);
    const wide = sureFlow(estimate(2, 1.77, 2.27), 150);
    expect(wide.value).toBeNull();
    expect(wide.why).toContain('1,800 to 2,300 L/s');
    const why = withheld('No log.');
    expect(sureFlow(why, 150)).toBe(why);
  });

  it('tell the moisture at the end where its interval leaves no more than half a point on either side, and isotherms do not part', () => {
    const narrow = estimate(0.15, 0.1455, 0.1545);
    expect(sureEnd(narrow, null)).toBe(narrow);
    expect(sureEnd(narrow, 'Isotherms part.').why).toBe('Isotherms part.');
    const wide = sureEnd(estimate(0.15, 0.144, 0.156), null);
    expect(wide.value).toBeNull();
    expect(wide.why).toContain('between 14.4 and 15.6 %');
  });
});
