import { describe, expect, it } from 'vitest';
import { seasonFront } from '../../../src/analysis/fronts/season-front.ts';
import type { BinReview, Campaign, FrontArrival } from '../../../src/analysis/types.ts';
import { frontsAnswer } from '../../../src/notebook/front-answer.ts';
import { frontLead, warmingLead } from '../../../src/notebook/front-lead.ts';
import { campaignTable } from '../../../src/notebook/front-tables.ts';
import { reachedSaid } from '../../../src/notebook/front-words.ts';
import { Units } from '../../../src/report/units.ts';
import { campaignOf, sensorOf } from '../../notebook/campaign-of.ts';
import { exampleInput } from '../../report/example-review.ts';

const DAY = 86_400_000;
const units = new Units('si', 'EUR', 'UTC');
const example = exampleInput().review.bins[0];

function binOf(campaigns: readonly Campaign[], name = 'North', why: string | null = null): BinReview {
  return { ...example, bin: { ...example.bin, name }, fronts: { campaigns, why } };
}

/** The nth campaign, begun on the nth of January 2025, with air so cold; each sensor as told. */
function nth(
  number: number,
  airC: number,
  did: readonly (number | Partial<FrontArrival>)[],
  more: Partial<Campaign> = {},
) {
  const fromMs = Date.UTC(2025, 0, number);
  const arrivals = did.map((one, i) => sensorOf('C1', i + 1, 1 + i, one, fromMs));
  return campaignOf(arrivals, { number, airC, span: { fromMs, toMs: fromMs + 5 * DAY }, ...more });
}

const HELD = { aheadC: 18, behindC: 17 };

describe('the main front of a bin', () => {
  it('is the coldest of the whole ones, not the last nor a colder one that came to few sensors', () => {
    const front = seasonFront(
      binOf([nth(1, 8, [5, 9]), nth(2, 2, [6, 12]), nth(3, 4, [5, 9]), nth(4, -3, [HELD, HELD])]),
    );
    expect(front.main?.campaign.number).toBe(2);
    expect(front.verdict).toBe('through');
    expect(front.later?.campaign.number).toBe(4);
    expect(frontLead(front, units)).toBe(
      'The coldest front of North began on 2 Jan 2025, with air of 2 °C into grain of 18 °C, both measured. It passed all 2 sensors and was through after 12.0 h (6.0 to 18.0) of fan running; the fans ran on for 88.0 h (82.0 to 94.0). Colder air from 4 Jan 2025 on (−3 °C, 100 h of fan, both measured) passed 0 of 2 and did not get through.',
    );
  });
  it('forgives a place that a later front reached', () => {
    const held = binOf([nth(1, 2, [5, 9, HELD])]);
    expect(seasonFront(held)).toMatchObject({ verdict: 'held', why: null });
    expect(seasonFront(binOf([...held.fronts.campaigns, nth(2, 4, [5, 9, 30])]))).toMatchObject({
      verdict: 'through',
      held: [],
    });
    // An earlier front does not help: the cold came after it.
    const earlier = seasonFront(binOf([nth(1, 4, [5, 9, 30]), nth(2, 2, [5, 9, HELD])]));
    expect(earlier.verdict).toBe('held');
    expect(frontLead(earlier, units)).toContain(
      'An earlier front, from 1 Jan 2025 with air of 4 °C (measured), had gone through everywhere.',
    );
  });
  it('is withheld with why: no cables, only warming, small steps', () => {
    expect(seasonFront(binOf([], 'N', 'No cable.'))).toMatchObject({ verdict: 'untold', why: 'No cable.', main: null });
    const warm = nth(1, 25, [5, 9], { kind: 'warming' });
    // Fans that dry cool their grain by evaporation in warm air: canola went from 31 to 22 °C in air of 26 °C (held-out farm).
    expect(seasonFront(binOf([warm])).why).toMatch(/none clearly cooler, so there is no cooling front to follow/);
    expect(seasonFront(binOf([warm])).why).not.toMatch(/only warmed/);
    const broken = {
      aheadC: 18,
      behindC: null,
      why: 'Good readings are lacking for 40 fan hours from amid the front on.',
    };
    const off = seasonFront(binOf([nth(1, 2, [5, 9, broken])]));
    expect(off).toMatchObject({
      verdict: 'untold',
      why: expect.stringMatching(/^The readings of 1 of 3 sensors break off/),
    });
    expect(off.main?.through).toBe(false);
    // A later front came by there.
    expect(seasonFront(binOf([nth(1, 2, [5, 9, broken]), nth(2, 4, [5, 9, 30])])).verdict).toBe('through');
    const near = { aheadC: 9, behindC: 8.5 };
    expect(seasonFront(binOf([nth(1, 8, [near, near])])).why).toMatch(/steps too small/);
  });
});

describe('the first words of the page', () => {
  const through = (name: string, last: number) => seasonFront(binOf([nth(1, 2, [5, last])], name));
  const held = (name: string) => seasonFront(binOf([nth(1, 2, [5, HELD])], name));
  const none = (name: string) => seasonFront(binOf([], name, 'No cable.'));
  const say = (...fronts: ReturnType<typeof seasonFront>[]) => frontsAnswer(fronts, units);
  it('say yes, where, and how long it took', () => {
    expect(say(through('A', 12))).toBe(
      'Yes: the cooling front got through everywhere in A, in 12.0 (6.0 to 18.0) fan hours of its coldest campaign.',
    );
    expect(say(through('A', 12), through('B', 60))).toBe(
      'Yes: the cooling front got through everywhere in A and B, in 12.0 (6.0 to 18.0) fan hours of the coldest campaign in A and up to 60.0 (54.0 to 66.0) in B.',
    );
    expect(say(...['A', 'B', 'C', 'D', 'E'].map((name) => through(name, 12)))).toMatch(
      /everywhere in all 5 bins, in 12\.0 \(6\.0 to 18\.0\) fan hours of the coldest campaign of each\./,
    );
  });
  it('say where not first: cable, height, bin, and how warm it stayed', () => {
    expect(say(through('A', 12), held('B'))).toBe(
      'Not everywhere: the cooling front did not reach cable C1 at 2.0 m in B (1 of 2 sensors, left at 17 °C, measured). It got through everywhere in A, in 12.0 (6.0 to 18.0) fan hours of its coldest campaign.',
    );
    expect(say(held('A'), held('B'), held('C'), held('D'), none('E'))).toMatch(
      /nor all of 1 more bin\. It can’t be told of E\.$/,
    );
  });
  it('say why it can’t be told', () => {
    expect(say(none('A'))).toBe('Can’t tell whether a cooling front got through any bin: no cable.');
    expect(say(none('A'), none('B'))).toMatch(/: of each, no cable\.$/);
    expect(say()).toMatch(/no bin in season\.yaml/);
  });
});

describe('cells and warming', () => {
  it('tell sensors that stand above each other as a stretch', () => {
    const [finding] = seasonFront(
      binOf([nth(1, 2, [5, HELD, HELD, HELD, { why: 'The sensor has no good readings.' }])]),
    ).cooling;
    expect(reachedSaid(finding, units)).toBe('1 of 5; not C1 from 2.0 to 4.0 m; 1 unread');
  });
  it('keep warming out of the cooling, but in the table of all campaigns', () => {
    const front = seasonFront(binOf([nth(1, 25, [5, 9], { kind: 'warming', grainC: 10 }), nth(2, 2, [5, 9])]));
    expect(front.cooling.map((one) => one.campaign.number)).toEqual([2]);
    expect(campaignTable(front, units).rows.map((row) => row.name)).toEqual(['1 warming', '2 cooling']);
    expect(warmingLead([front])).toMatch(/into 1 bin in 1 campaign, through everywhere in 1/);
    expect(warmingLead([])).toBe('No warming campaign was found.');
  });
});
