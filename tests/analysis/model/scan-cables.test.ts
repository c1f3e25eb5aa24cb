import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/analysis/model/fit-bin.ts';
import { FIRST_CABLE, type FitParameters } from '../../../src/analysis/model/fit-parameters.ts';
import { scanCables } from '../../../src/analysis/model/scan-cables.ts';
import { solve } from '../../../src/analysis/model/solve-fit.ts';

const UNIT = 0.2;
const bounded = { unit: UNIT, low: -10, high: 10 };
const parameters: FitParameters = {
  list: Array.from({ length: FIRST_CABLE + 2 }, (_, k) => ({ name: `value ${k}`, ...bounded })),
};

/** Two cables: one fits at its mean airflow, the other at a fifth of it, beyond a ridge. */
const twoHollows = (at: number) => ({
  residuals: (values: readonly number[]) => {
    const [one, other] = values.slice(FIRST_CABLE).map((value) => UNIT * value);
    const own = values.slice(0, FIRST_CABLE);
    // Zero at 0 (with 2 left) and at `at`; 2 + 3 half-way.
    const ridge = 3 * Math.sin((Math.PI * other) / at) ** 2 + (2 * (other - at) ** 2) / at ** 2;
    return Float64Array.from([...own, one, Math.sqrt(ridge)]);
  },
  fitAt: (values: readonly number[], cost: number) => ({ values: [...values], cost }),
});

describe('cables beyond a ridge', () => {
  const model = twoHollows(Math.log(0.22)) as unknown as Model;
  const start = parameters.list.map(() => 0);

  it('are found where steps by slopes stay on this side', () => {
    const stuck = solve(model, parameters, start, 4);
    expect(UNIT * stuck.values[FIRST_CABLE + 1]).toBeGreaterThan(-0.4);
    const freed = scanCables(model, parameters, stuck.values);
    const found = solve(model, parameters, freed, 4);
    expect(UNIT * found.values[FIRST_CABLE + 1]).toBeCloseTo(Math.log(0.22), 2);
    expect(found.values[FIRST_CABLE]).toBeCloseTo(stuck.values[FIRST_CABLE], 1);
    expect(found.cost).toBeLessThan(stuck.cost / 10);
  });

  it('stay where nothing fits better', () => {
    const good = parameters.list.map((_, k) => (k === FIRST_CABLE + 1 ? Math.log(0.22) / UNIT : 0));
    expect(scanCables(model, parameters, good)).toBe(good);
  });
});
