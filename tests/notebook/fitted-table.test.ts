import { describe, expect, it } from 'vitest';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import { estimate } from '../../src/base/estimate.ts';
import { fittedNotes, fittedTable } from '../../src/notebook/fitted-table.ts';
import type { Played } from '../../src/notebook/strategy-words.ts';

const factors = (rateFactor: number) => ({
  ...{ rateFactor, heatFactor: 1, wallFactor: 1.5, respirationFactor: 0.2, enteringK: rateFactor / 10 },
});

/** A bin whose fit has the first rate, and others that go with its log the rest. */
function played(rates: readonly number[], other: Partial<BinModel> = {}): Played {
  const [own, ...may] = rates;
  const model = {
    trusted: true,
    fitted: factors(own),
    mayBes: may.map((rate) => ({ fitted: factors(rate), doubt: {} })),
    flowM3S: estimate(4, 3.5, 4.6),
    moistureBiasPoints: estimate(0.2, -0.1, 0.5),
    why: 'It fits.',
    ...other,
  };
  return { review: { bin: { id: 'B1', name: 'Lane 36' } }, whatIf: { model } } as unknown as Played;
}

const rowOf = (one: Played) => fittedTable([one]).rows[0];

describe('what was fitted', () => {
  it('stands with airflow and bias as estimated, and the range of each factor over the bins that go with the log', () => {
    expect(rowOf(played([3, 2.5, 4]))).toMatchObject({
      flow: { value: 4, interval: [3.5, 4.6] },
      bias: { value: 0.2, interval: [-0.1, 0.5] },
      entering: { value: 0.3, interval: [0.25, 0.4] },
      rate: { value: 3, interval: [2.5, 4] },
      wall: { value: 1.5, interval: [1.5, 1.5] },
      sure: 'yes',
    });
  });

  it('says of a rate that is wide, or ends where fits may go no farther, that the log does not tell it', () => {
    expect(rowOf(played([3, 1, 5])).sure).toBe('hardly');
    // Eight times 2.3, as far as a fit may go.
    expect(rowOf(played([9, 6, 18.4])).sure).toBe('at least so fast');
    expect(rowOf(played([18.4])).sure).toBe('at least so fast');
    expect(fittedNotes([played([3, 1, 5])])[0]).toContain('and of 2 bins that go with the log');
  });

  it('withholds all of a bed that is not trusted, with why', () => {
    const { bin, sure, ...rest } = rowOf(played([3, 2], { trusted: false, why: 'Too far off.' }));
    expect([bin, sure]).toEqual(['Lane 36', '']);
    for (const cell of Object.values(rest)) expect(cell).toEqual({ value: null, why: 'Too far off.' });
  });
});
