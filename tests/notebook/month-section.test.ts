import { expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { monthSection } from '../../src/notebook/money-tables.ts';
import { Units } from '../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
/** A fan's months: hours, and what their energy cost; null: no tariff. */
const bin = (months: readonly (readonly [month: string, hours: number, cost: number | null])[]) =>
  ({
    bin: { id: 'B1', name: 'North', fans: ['F1'] },
    fan: {
      fans: [{ fanId: 'F1' }],
      hours: { value: 1, interval: null, why: null },
      months: months.map(([month, hours, energyCost]) => ({
        ...{ month, hours, energyCost, demandCost: energyCost === null ? null : 0, unknownHours: 0, energyKwh: hours },
        why: energyCost === null ? 'No tariff.' : null,
      })),
    },
  }) as unknown as BinReview;

it('leads with the month on which most of the money fell, and draws no money where none is known', () => {
  const priced = monthSection(
    [
      bin([
        ['2024-10', 100, 40],
        ['2024-11', 60, 55],
      ]),
    ],
    units,
  );
  expect(priced.lead).toBe('The dearest month was Nov 2024: 55 USD of energy and demand.');
  expect(priced.figures?.map(({ id }) => id)).toEqual(['hours', 'cost']);
  const bare = monthSection(
    [
      bin([
        ['2024-10', 100, null],
        ['2024-11', 60, null],
      ]),
    ],
    units,
  );
  expect(bare.lead).toBe('The fans ran most in Oct 2024: 100 h.');
  expect(bare.figures?.map(({ id }) => id)).toEqual(['hours']);
});
