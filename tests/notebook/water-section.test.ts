import { expect, it } from 'vitest';
import type { BinWater } from '../../src/analysis/types.ts';
import { waterSection } from '../../src/notebook/water-section.ts';
import { exampleInput } from '../report/example-review.ts';

const { review, units } = exampleInput();

it('what makes the water by air unsure stands as a 90 % limit: 1.6449 standard errors', () => {
  const [first] = review.bins;
  const air = { ...first.water.air, parts: [{ cause: 'airflow', sdKg: 100 }] } as BinWater['air'];
  const told = waterSection([{ ...first, water: { ...first.water, air } }], units);
  const table = told.tables?.find(({ id }) => id === 'water-errors');
  expect(table?.columns.find(({ key }) => key === 'off')?.known).toBe('90 % limit');
  expect(table?.caption).toContain('nine times in ten by less');
  expect(table?.rows).toEqual([{ bin: first.bin.name, cause: 'Airflow', off: expect.closeTo(164.485, 2) }]);
});
