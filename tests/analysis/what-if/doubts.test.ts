import { expect, it } from 'vitest';
import { summaryJsonSchema } from '../../../src/analysis/summary-shape.ts';
import { DOUBTS } from '../../../src/analysis/what-if/doubts.ts';

it('the summary’s schema says which runs its ranges of costs span', () => {
  const schema = JSON.stringify(summaryJsonSchema());
  // costInterval; costPerBushelInterval, costPerBushelPointInterval.
  expect(schema.split(DOUBTS)).toHaveLength(1 + 3);
  expect(schema).not.toMatch(/either side of the fit|about the fit/);
});
