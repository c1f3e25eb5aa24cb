import { describe, expect, it } from 'vitest';
import { missing } from '../../../src/analysis/airflow/bin-airflow.ts';
import { airflowWithModel } from '../../../src/analysis/model/airflow-with-model.ts';
import type { BinModel } from '../../../src/analysis/model/model-types.ts';
import { type Estimate, estimate, withheld } from '../../../src/base/estimate.ts';
import { statedModel } from '../../support/stated-model.ts';

const FRONT = estimate(2, 1.8, 2.2);
const fitted = (flowM3S: Estimate, trusted = true): BinModel =>
  statedModel(null, {
    flowM3S,
    trusted,
    why: trusted ? 'near to the log' : 'The clock of the fan log is off.',
  });
const airflow = (byFront: Estimate, byPressure: Estimate, agree: boolean | null) => ({
  ...missing('no way'),
  byFront,
  byPressure,
  flowM3S: byFront,
  from: 'front' as const,
  agree,
  why: null,
});

describe('the airflow of a fitted bed beside the other ways', () => {
  const alone = airflow(FRONT, withheld('no gauge'), null);

  it('stands beside them and takes nobody’s place', () => {
    const told = airflowWithModel(alone, fitted(estimate(2.1, 1.9, 2.4)));
    expect(told.byModel.value).toBe(2.1);
    expect(told.flowM3S).toEqual(FRONT);
    expect(told.from).toBe('front');
    expect(told.agree).toBe(true);
  });

  it('disagrees where the intervals do not reach each other', () => {
    expect(airflowWithModel(alone, fitted(estimate(3, 2.5, 3.5))).agree).toBe(false);
  });

  it('heals no disagreement of the others', () => {
    const apart = airflow(FRONT, estimate(4, 3.5, 4.5), false);
    expect(airflowWithModel(apart, fitted(estimate(3, 2, 4))).agree).toBe(false);
  });

  it('agrees with nobody where it is the only way', () => {
    const none = airflow(withheld('no front'), withheld('no gauge'), null);
    expect(airflowWithModel(none, fitted(estimate(2, 1, 3))).agree).toBeNull();
  });

  it('is withheld with its reason where the bed is not trusted, and leaves the rest as it was', () => {
    const told = airflowWithModel(alone, fitted(estimate(2.1, 1.9, 2.4), false));
    expect(told.byModel).toEqual(withheld('The clock of the fan log is off.'));
    expect({ ...told, byModel: alone.byModel }).toEqual(alone);
  });
});
