import { describe, expect, it } from 'vitest';
import { SUMMARY_SHAPE } from '../../../src/analysis/summary-shape.ts';
import { CROSSED_SHAPE } from '../../../src/analysis/what-if/crossed-shape.ts';
import { crossedSummary } from '../../../src/analysis/what-if/crossed-summary.ts';
import type { Crossed } from '../../../src/analysis/what-if/crossed-types.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';

const none = withheld('This bin has no heater.');
const crossed: Crossed = {
  ways: [
    { id: 'always-on', title: 'Always on', binIds: ['B1'], why: null },
    { id: 'hours of B2', title: 'Hours of B2', binIds: ['B2'], why: 'B2 has no log.' },
  ],
  bins: [
    {
      binId: 'B1',
      why: null,
      cells: [
        {
          wayId: 'always-on',
          own: true,
          perBushel: estimate(0.02, 0.018, 0.03),
          perBushelPoint: estimate(0.01, 0.009, 0.015),
          overOwn: estimate(1, 1, 1),
          runCosts: null,
          reached: true,
          reaching: 5,
          runs: 6,
        },
        {
          wayId: 'hours of B2',
          own: false,
          perBushel: none,
          perBushelPoint: none,
          overOwn: none,
          runCosts: null,
          reached: null,
          reaching: 0,
          runs: 0,
        },
      ],
    },
    { binId: 'B2', cells: [], why: 'It does not fit.' },
  ],
  parts: [
    {
      goal: 'dry',
      binIds: ['B1'],
      wayIds: [],
      split: { mean: -4, rows: [0], columns: [0], share: { rows: 0.25, columns: 0.7, rest: 0.05 } },
      ranges: null,
      why: null,
    },
    { goal: 'cool', binIds: [], wayIds: [], split: null, ranges: null, why: 'None.' },
  ],
};

describe('the block crossed of summary.json', () => {
  it('holds each way on each bin, and why where there is none', () => {
    const told = crossedSummary({ crossed, whatIf: [] });
    expect(CROSSED_SHAPE.parse(told)).toEqual(told);
    expect(told.runs[0]).toMatchObject({
      ...{ bin: 'B1', way: 'always-on', own: true, costPerBushel: 0.02, costPerBushelInterval: [0.018, 0.03] },
      ...{ overOwn: 1, reachedTarget: true, runsReaching: 5, runs: 6, why: null },
    });
    expect(told.runs[1]).toMatchObject({ costPerBushel: null, reachedTarget: null, why: 'This bin has no heater.' });
    expect(told.leftOut).toEqual([{ bin: 'B2', why: 'It does not fit.' }]);
    expect(told.parts.map(({ binShare, wayShare, why }) => [binShare, wayShare, why])).toEqual([
      [0.25, 0.7, null],
      [null, null, 'None.'],
    ]);
  });

  it('says why where models were left out, or the runs broke', () => {
    expect(crossedSummary({ crossed: undefined, whatIf: undefined }).why).toContain('--no-model');
    expect(crossedSummary({ crossed: undefined, whatIf: [] }).why).toBe(
      'The runs of this comparison could not be made.',
    );
    expect(SUMMARY_SHAPE.shape.crossed).toBeDefined();
  });
});
