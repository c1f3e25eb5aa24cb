import { describe, expect, it } from 'vitest';
import { missingCondition } from '../../src/analysis/condition/bin-condition.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { storageGuidanceOf } from '../../src/grain/storage-guidance.ts';
import { dryEnough, guidanceSection } from '../../src/notebook/condition-guidance.ts';
import { exampleInput } from '../report/example-review.ts';

const { review } = exampleInput();

function ended(name: string, crop: string, value: number | null, interval: [number, number] | null = null): BinReview {
  const [first] = review.bins;
  return {
    ...first,
    bin: { ...first.bin, name, grain: { ...first.bin.grain, crop } },
    moisture: {
      ...first.moisture,
      end: { ...first.moisture.end, value, interval },
      why: value === null ? 'No moisture of the grain is known.' : null,
    },
  };
}

describe('moisture at the end beside published guidance', () => {
  // Corn: 15 % up to six months, 13 % for longer. Wheat: 13.5 %, nothing read for shorter.
  it.each([
    ['corn', 0.126, 0.122, 0.13, 'longer'],
    ['corn', 0.126, 0.121, 0.131, 'perhaps'],
    ['corn', 0.14, 0.135, 0.145, 'short'],
    ['corn', 0.149, 0.14, 0.156, 'open'],
    ['corn', 0.16, 0.151, 0.17, 'no'],
    ['wheat', 0.14, 0.136, 0.144, 'no'],
    ['wheat', 0.134, 0.13, 0.138, 'open'],
  ] as const)('%s of %f (%f to %f) is: %s', (crop, value, low, high, said) => {
    expect(dryEnough(estimate(value, low, high), storageGuidanceOf(crop))).toBe(said);
  });

  it('goes by the number alone where it has no interval, and says nothing where it or the guidance is not known', () => {
    expect(dryEnough({ value: 0.14, interval: null, why: null }, storageGuidanceOf('corn'))).toBe('short');
    expect(dryEnough(withheld('No log.'), storageGuidanceOf('corn'))).toBeNull();
    expect(dryEnough(estimate(0.1, 0.09, 0.11), storageGuidanceOf('oats'))).toBeNull();
  });

  it('does not let a dry mean speak for a wet core', () => {
    const dry = ended('Gas', 'corn', 0.121, [0.115, 0.127]);
    const wettest = { cable: 'H1', sensor: 5, heightM: 4.1, endWb: estimate(0.185, 0.179, 0.191), aboveWb: 0.15 };
    const { lead, table } = guidanceSection([
      { ...dry, condition: { ...missingCondition(''), wettest } },
      ended('South', 'corn', 0.14, [0.135, 0.145]),
    ]);
    expect(lead).toMatch(
      / A mean hides the wettest grain: in Gas a sensor ended above what is published for storing the crop\.$/,
    );
    expect(table?.rows[0].wettest).toMatchObject({ value: 0.185 });
    // A mean that is too moist itself hides nothing.
    const moist = { ...ended('Wet', 'corn', 0.18, [0.175, 0.185]), condition: { ...missingCondition(''), wettest } };
    expect(guidanceSection([moist, dry]).lead).not.toContain('hides');
  });

  it('leads with how many bins are dry enough, and gives each guidance with its source', () => {
    const { lead, table } = guidanceSection([
      ended('North', 'corn', 0.125, [0.12, 0.129]),
      ended('South', 'corn', 0.14, [0.135, 0.145]),
      ended('Middle', 'corn', 0.129, [0.123, 0.135]),
      ended('East', 'wheat', 0.15, [0.146, 0.154]),
      ended('West', 'oats', 0.12, [0.115, 0.125]),
    ]);
    expect(lead).toBe(
      'By published guidance for storing it, the mean grain of 1 of 4 bins ended clearly dry enough to keep longer than six months; 1 for six months and perhaps longer, 1 for six months, 1 moister than it.',
    );
    expect(table?.rows.map(({ guidance }) => guidance)).toMatchObject([
      '15 % to six months, 13 % for longer',
      '15 % to six months, 13 % for longer',
      '15 % to six months, 13 % for longer',
      '13.5 % for longer; in the south below 12.5 %',
      { value: null, why: 'No guidance for storing oats was read.' },
    ]);
    expect(table?.rows[0].source).toContain('Michigan State University Extension; read');
  });

  it('says of one bin what it is, and of no bin none', () => {
    expect(guidanceSection([ended('North', 'corn', 0.14, [0.135, 0.145])]).lead).toBe(
      'At the end the mean grain was, by published guidance for storing it, dry enough for six months, not for longer.',
    );
    expect(guidanceSection([ended('North', 'corn', 0.18), ended('South', 'corn', 0.17)]).lead).toContain(
      'the mean grain of none of 2 bins ended clearly dry enough to keep longer than six months; 2 moister than it.',
    );
  });

  it('is a dash with its reason where no moisture is known, and so for a season without bins', () => {
    const { lead, table } = guidanceSection([ended('North', 'corn', null)]);
    expect(lead).toContain('Can’t hold the moisture of any bin');
    expect(table?.rows[0].enough).toMatchObject({ value: null, why: 'No moisture of the grain is known.' });
    expect(guidanceSection([]).lead).toContain('Can’t hold');
  });
});
