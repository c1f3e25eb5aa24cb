import { expect, it } from 'vitest';
import { rankBins } from '../../../scripts/bench/ranking/bench-ranking.ts';

// A guard, not the measure: `npm run bench -- ranking` draws fifty. The other bed is the generator's, in which nothing of the kit runs
// but the strategies and the storage rule. Nine in ten are asked for of fifty; one of three may miss.
it('the strategy called cheapest is within 5 % of the cheapest in another bed, in most of some drawn bins', () => {
  const { all, right } = rankBins(3, 1001, 'known');
  expect(all).toBe(3);
  expect(right).toBeGreaterThanOrEqual(2);
}, 300_000);
