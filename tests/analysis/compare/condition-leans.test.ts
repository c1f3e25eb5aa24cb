import { expect, it } from 'vitest';
import type { BinConditions } from '../../../src/analysis/compare/comparison.ts';
import { conditionLeans } from '../../../src/analysis/compare/condition-leans.ts';
import { unknownAir } from '../../../src/analysis/compare/fill-air.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';

const at = (airflow: number, start: number, settles: number, outdoorC: number): BinConditions => ({
  airflowCfmPerBushel: estimate(airflow, airflow * 0.9, airflow * 1.1),
  startWb: estimate(start, start - 0.005, start + 0.005),
  endWb: estimate(0.15, 0.145, 0.155),
  startC: withheld('-'),
  endC: withheld('-'),
  air: {
    ...unknownAir('-'),
    outdoorC,
    outdoorRh: 0.7,
    equilibriumWb: estimate(settles, settles - 0.01, settles),
    // Another edition of the isotherm says a point less of either.
    byIsotherm: [
      { isotherm: 'own', moistureWb: settles },
      { isotherm: 'other', moistureWb: settles * 0.95 },
    ],
    why: null,
  },
});
const told = (...args: Parameters<typeof conditionLeans>) =>
  conditionLeans(...args).map(({ condition, hours }) => `${condition}: ${hours}`);

// Which way each works is common practice: more air, warmer and drier air dry faster, and the last points are the slowest.
it('less air, drier grain, damper and colder air make a point take more hours', () => {
  const poor = at(0.5, 0.16, 0.16, 8);
  const good = at(1.2, 0.19, 0.14, 15);
  const all = ['airflow', 'start moisture', 'air moisture', 'air temperature'];
  expect(told('dry', poor, good, true)).toEqual(all.map((name) => `${name}: more`));
  expect(told('dry', good, poor, true)).toEqual(all.map((name) => `${name}: fewer`));
});

it('adding points goes the other way with moisture', () => {
  expect(told('condition', at(1, 0.1, 0.16, 15), at(1, 0.12, 0.14, 15), true)).toEqual([
    'start moisture: fewer',
    'air moisture: fewer',
  ]);
});

it('nothing is said of what cannot be told apart, of another crop’s moisture, or of goals without points', () => {
  expect(told('dry', at(1, 0.16, 0.15, 10), at(1.15, 0.165, 0.153, 11), true)).toEqual([]);
  expect(told('dry', at(0.5, 0.16, 0.16, 8), at(1.2, 0.19, 0.14, 15), false)).toEqual([
    'airflow: more',
    'air temperature: more',
  ]);
  expect(told('cool', at(0.5, 0.16, 0.16, 8), at(1.2, 0.19, 0.14, 15), true)).toEqual([]);
});

it('differences carry the errors of both, but of the isotherm only what does not cancel', () => {
  const leans = conditionLeans('dry', at(0.5, 0.16, 0.16, 8), at(1.2, 0.19, 0.14, 15), true);
  const of = (name: string) => leans.find(({ condition }) => condition === name)?.difference;
  // 0.5 ± 0.05 less 1.2 ± 0.12: -0.7 ± 0.13 (5, 12, 13)
  expect(of('airflow')).toMatchObject({
    value: expect.closeTo(-0.7, 9),
    interval: [expect.closeTo(-0.83, 9), expect.closeTo(-0.57, 9)],
  });
  // 16 less 14 %; by the other edition 15.2 less 13.3 %
  expect(of('air moisture')).toMatchObject({
    value: expect.closeTo(0.02, 9),
    interval: [expect.closeTo(0.019, 9), expect.closeTo(0.02, 9)],
  });
  expect(of('air temperature')).toEqual({ value: -7, interval: null, why: null });
});
