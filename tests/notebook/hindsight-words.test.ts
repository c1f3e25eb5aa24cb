import { describe, expect, it } from 'vitest';
import type { StrategyOutcome } from '../../src/analysis/what-if/what-if-types.ts';
import { estimate } from '../../src/base/estimate.ts';
import { hindsightSaid, ruleAgesSaid } from '../../src/notebook/hindsight-words.ts';
import { Units } from '../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');

function run(cost: number, reachedMs: number | null, lifeUsed: number): StrategyOutcome {
  const outcome = { reachedTarget: reachedMs !== null, lifeUsed } as StrategyOutcome['outcome'];
  return { id: '', title: '', outcome, cost: estimate(cost, cost, cost), reaching: 1, runs: 1, reachedMs };
}
const PICK = run(55, Date.UTC(2024, 10, 17, 12), 0.38);

describe('the best in hindsight in words', () => {
  it('tells its cost and its day', () => {
    expect(hindsightSaid(run(40, Date.UTC(2024, 10, 16, 12), 0.42), PICK, UNITS)).toBe(
      ' With the weather known ahead 40 USD would have done, by 16 Nov 2024.',
    );
  });

  it('tells what it takes of the grain where that is clearly more', () => {
    expect(hindsightSaid(run(10, Date.UTC(2025, 3, 20, 12), 0.896), PICK, UNITS)).toBe(
      ' With the weather known ahead 10 USD would have done, by 20 Apr 2025, with 89.6 % of the storage time used in place of 38.0 %.',
    );
    expect(hindsightSaid(run(40, PICK.reachedMs, Number.NaN), PICK, UNITS)).not.toContain('storage time');
  });

  it('tells what a rule takes of it where that is clearly more than as run, or all there is', () => {
    const rule = (lifeUsed: number, asRun: number) =>
      ruleAgesSaid(run(40, PICK.reachedMs, lifeUsed), run(60, null, asRun), UNITS);
    expect(rule(0.5, 0.38)).toBe(
      ' Under this rule the worst layer would have used 50.0 % of the storage time by the model, 38.0 % as run.',
    );
    expect(rule(1.04, 1.55)).toBe(
      ' Under this rule the worst layer would have used 104 % of the storage time by the model, 155 % as run: more than there is.',
    );
    expect(rule(0.42, 0.38)).toBe('');
    expect(rule(Number.NaN, Number.NaN)).toBe('');
  });

  it('says of a dearer one that it is there earlier', () => {
    expect(hindsightSaid(run(60, Date.UTC(2024, 9, 20, 12), 0.2), PICK, UNITS)).toBe(
      ' To be there as early as it was, by 20 Oct 2024, would have taken 60 USD with the weather known ahead.',
    );
  });

  it('says nothing where none reaches, or there is none', () => {
    expect(hindsightSaid(run(40, null, 0.2), PICK, UNITS)).toBe('');
    expect(hindsightSaid(null, PICK, UNITS)).toBe('');
  });
});
