import { describe, expect, it } from 'vitest';
import { lackOf, optionsKeeping } from '../../scripts/review/sweep-due.ts';
import { sweepOptions } from '../../scripts/sweep/sweep-options.ts';
import type { SweepPlan } from '../../src/analysis/strategies/sweep-plan.ts';
import { AS_IT_IS } from '../../src/analysis/strategies/variant.ts';

const RULES = sweepOptions({ hindsight: false }).strategies;

function planOf(more: Partial<SweepPlan>): SweepPlan {
  return {
    ...{ format: 1, kit: { version: '0', code: '' }, season: { title: '', sha256: '', currency: 'USD' } },
    ...{ strategies: RULES, variants: [AS_IT_IS], by: ['10-31', '02-28'] },
    bins: ['N1', 'S1'].map((id) => ({ id, name: id, bushels: 1, startOn: null, weathers: ['season', '2020'] })),
    ...more,
  };
}
const DUE = ['N1', 'S1'].map((id) => ({ id, weathers: ['season', '2020'] }));

describe('what a sweep lacks of what a review asks', () => {
  it('is told by bins, rules and years; a whole one lacks nothing', () => {
    const { bins } = planOf({});
    expect(lackOf(planOf({}), DUE)).toBeNull();
    expect(lackOf(planOf({ bins: bins.slice(1) }), DUE)).toBe('bin N1');
    expect(lackOf(planOf({ strategies: RULES.filter((id) => id !== 'night-hours') }), DUE)).toBe('night-hours');
    expect(lackOf(planOf({ bins: bins.map((bin) => ({ ...bin, weathers: ['season'] })) }), DUE)).toBe('1 of the years');
    // A way of one's own is not the rule itself.
    const own = RULES.map((id) => (id === 'humidity-limit' ? 'humidity-limit with rh 60 %' : id));
    expect(lackOf(planOf({ strategies: own }), DUE)).toBe('humidity-limit');
  });
});

describe('what is run in its place', () => {
  it('is all that is due, with ways, steps and days of the one before', () => {
    expect(optionsKeeping(null)).toEqual(sweepOptions({ hindsight: false }));
    const drier = { ...AS_IT_IS, startPoints: -2 };
    const kept = optionsKeeping(
      planOf({
        strategies: ['always-on', 'humidity-limit with rh 60 %', 'a-rule-no-more', 'best-in-hindsight'],
        variants: [AS_IT_IS, drier],
        by: ['11-15'],
      }),
    );
    expect(kept.strategies).toEqual([...RULES, 'humidity-limit with rh 60 %', 'best-in-hindsight']);
    expect([kept.variants, kept.by]).toEqual([[AS_IT_IS, drier], ['11-15']]);
    // Month ends are worked out anew.
    expect(optionsKeeping(planOf({})).by).toBeNull();
  });
});
