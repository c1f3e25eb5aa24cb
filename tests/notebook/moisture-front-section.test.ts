import { describe, expect, test } from 'vitest';
import type { MoistureArrival, MoistureFront } from '../../src/analysis/fronts/moisture-front-types.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { moistureFrontSection } from '../../src/notebook/moisture-front-section.ts';
import { Units } from '../../src/report/units.ts';
import { exampleInput } from '../report/example-review.ts';

const units = new Units('si', 'EUR', 'UTC');
const example = exampleInput().review.bins[0];
const START = Date.UTC(2024, 9, 5);
const NOT = 'The drying front did not get there: the moisture did not go half of the way and stay there.';

const sensor = (cable: string, at: number, fanHours: number | null, within = 10): MoistureArrival => ({
  cable,
  sensor: at,
  heightM: at,
  arrivedMs: fanHours === null ? null : START + fanHours * 3_600_000,
  fanHours,
  fanHoursInterval: fanHours === null ? null : [fanHours - within, fanHours + within],
  aheadWb: 0.18,
  endWb: fanHours === null ? 0.178 : 0.13,
  why: fanHours === null ? NOT : null,
});

const binOf = (name: string, arrivals: readonly MoistureArrival[], why: string | null = null): BinReview => {
  const front: MoistureFront = {
    number: 3,
    kind: 'drying',
    span: { fromMs: START, toMs: START + 500 * 3_600_000 },
    fanHours: 500,
    aheadWb: 0.18,
    behindWb: 0.13,
    arrivals,
  };
  return {
    ...example,
    failure: null,
    bin: { ...example.bin, name },
    fronts: { campaigns: [], why: null, moisture: { front: why === null ? front : null, why } },
  };
};

describe('drying fronts on the page', () => {
  const two = binOf('North', [
    sensor('C1', 1, 100),
    sensor('C1', 2, 200),
    sensor('C1', 3, 320),
    sensor('C2', 1, 150),
    sensor('C2', 2, 330),
    sensor('C2', 3, null),
  ]);

  test('says how far it came, where last and how far a cable is behind', () => {
    const { lead, table } = moistureFrontSection([two], units);
    expect(lead).toBe(
      'In North the drying front passed 5 of 6 sensors, last cable C2 at 2.0 m. Grain beyond it had not gone half of the way when the fans stopped.',
    );
    // C2 at 2 m came 330 - 200 = 130 h behind C1 there, more than its own 10 h.
    expect(table!.rows[0]).toMatchObject({
      passed: '5 of 6',
      last: { value: 330, interval: [320, 340] },
      slowest: 'C2 at 2.0 m, +130 h',
    });
  });

  test('bins with clauses of commas of their own are parted by semicolons', () => {
    const whole = binOf('South', [sensor('C1', 1, 100), sensor('C1', 2, 200)]);
    const { lead } = moistureFrontSection([two, two, whole], units);
    expect(lead).toMatch(
      /^In North the drying front passed .* at 2\.0 m; in North the .* at 2\.0 m; and the drying front passed every sensor that can tell in South\. Grain/,
    );
  });

  test('the last one is the latest by the clock, though a hole of the fan’s log leaves its fan hours open', () => {
    const late: MoistureArrival = { ...sensor('C1', 3, 340), fanHours: null, fanHoursInterval: null, why: 'A hole.' };
    const { lead, table } = moistureFrontSection(
      [binOf('East', [sensor('C1', 1, 100), sensor('C1', 2, 200), late, sensor('C2', 3, null)])],
      units,
    );
    expect(lead).toContain('passed 3 of 4 sensors, last cable C1 at 3.0 m');
    expect(table!.rows[0]).toMatchObject({ last: { value: null }, where: 'C1 at 3.0 m' });
  });

  test('a lag within a sensor’s own interval is none', () => {
    const even = binOf('South', [
      sensor('C1', 1, 100),
      sensor('C1', 2, 200),
      sensor('C2', 1, 104),
      sensor('C2', 2, 203),
    ]);
    const { lead, table } = moistureFrontSection([even], units);
    expect(table!.rows[0].slowest).toBe('within the intervals');
    expect(lead).toBe('The drying front passed every sensor that can tell in South.');
  });

  test('a bin without one gives its reason in every cell, and none at all is said so', () => {
    const dry = binOf('West', [], 'No cable of this bin has good moisture readings while its fans ran.');
    const { lead, table, tables } = moistureFrontSection([dry], units);
    expect(lead).toBe(
      'No drying front can be told of: no cable of this bin has good moisture readings while its fans ran.',
    );
    expect(table!.rows[0].last).toMatchObject({ value: null, why: expect.stringMatching(/^No cable/) });
    expect(tables![0].rows).toEqual([]);
  });
});
