import { describe, expect, test } from 'vitest';
import { seasonFront } from '../../src/analysis/fronts/season-front.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { type Estimate, estimate } from '../../src/base/estimate.ts';
import { paceTable } from '../../src/notebook/front-pace.ts';
import { Units } from '../../src/report/units.ts';
import { exampleInput } from '../report/example-review.ts';
import { campaignOf, sensorOf } from './campaign-of.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const example = exampleInput().review.bins[0];

function rowAt(fromMs: number, cfmPerBushel: Estimate, latitudeDeg: number | null = 42) {
  const arrivals = [5, 9, 14].map((hours, i) => sensorOf('C1', i + 1, 1 + i, hours, fromMs));
  const campaign = campaignOf(arrivals, {
    span: { fromMs, toMs: fromMs + 4 * 86_400_000 },
    speed: { speedMH: estimate(0.25, 0.2, 0.4), cables: [] },
  });
  const review: BinReview = {
    ...example,
    airflow: { ...example.airflow, cfmPerBushel },
    fronts: { campaigns: [campaign], why: null },
  };
  return paceTable([seasonFront(review)], units, latitudeDeg).rows[0];
}

describe('planning figures beside the measured front', () => {
  const air = estimate(0.1, 0.08, 0.125);

  // 15 / 0.1 = 150 h, 15 / 0.125 = 120 h, 15 / 0.08 = 187.5 h; the handbook's winter is 20 / 0.1 = 200 h (MWPS-13, from memory).
  test('in November the handbook says what the rule says, in January a third more', () => {
    const fall = rowAt(Date.UTC(2024, 10, 20), air);
    expect(fall.rule).toEqual({ value: 150, interval: [120, 187.5], why: null });
    expect(fall.handbook).toEqual(fall.rule);
    expect(rowAt(Date.UTC(2025, 0, 20), air).handbook).toMatchObject({ value: 200, interval: [160, 250] });
  });

  test('the month is the local one: 1 December 03:00 UTC is still November in Chicago', () => {
    expect(rowAt(Date.UTC(2024, 11, 1, 3), air).handbook).toMatchObject({ value: 150 });
    expect(rowAt(Date.UTC(2024, 11, 1, 9), air).handbook).toMatchObject({ value: 200 });
  });

  test('south of the equator the seasons lie half a year later', () => {
    const hours = (month: number) => rowAt(Date.UTC(2024, month, 20), air, -34).handbook;
    // May is fall there, July winter, January summer.
    expect(hours(4)).toMatchObject({ value: 150 });
    expect(hours(6)).toMatchObject({ value: 200 });
    expect(hours(0)).toMatchObject({ value: null, why: expect.stringMatching(/summer/) });
    expect(rowAt(Date.UTC(2024, 10, 20), air, null).handbook).toMatchObject({ value: 150 });
  });

  test('no airflow, no hours, with its reason; no handbook for a summer’s cooling; the speed stands', () => {
    const row = rowAt(Date.UTC(2024, 10, 20), { value: null, interval: null, why: 'No cable and no pressure.' });
    for (const key of ['rule', 'handbook'])
      expect(row[key]).toEqual({ value: null, interval: null, why: 'No cable and no pressure.' });
    expect(row.speed).toMatchObject({ value: 0.25, interval: [0.2, 0.4] });
    expect(rowAt(Date.UTC(2024, 6, 20), air).handbook).toMatchObject({
      value: null,
      why: expect.stringMatching(/summer/),
    });
  });
});
