import { expect, it } from 'vitest';
import { summaryJsonSchema } from '../../../src/analysis/summary-shape.ts';
import { DOUBTS, RUNS } from '../../../src/analysis/what-if/doubts.ts';
import { STRATEGY_METHODS } from '../../../src/base/methods/strategy-methods.ts';

it('the summary’s schema says which runs its ranges of costs span', () => {
  const schema = JSON.stringify(summaryJsonSchema());
  // costInterval; costPerBushelInterval, costPerBushelPointInterval.
  expect(schema.split(DOUBTS)).toHaveLength(1 + 3);
  expect(schema).not.toMatch(/either side of the fit|about the fit/);
});

it('the methods tell as many runs as there are', () => {
  const words: Record<number, string> = { 11: 'eleven', 12: 'twelve' };
  const statement = STRATEGY_METHODS.find(({ id }) => id === 'range-of-runs')?.statement;
  expect(statement).toContain(`is run ${words[RUNS]} times`);
  expect(statement).toContain(`in ${words[RUNS - 1]} beds`);
});
