import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LACKING } from '../../../src/analysis/fronts/blind-why.ts';
import { MOVED, outcomesOf, TELLING_REASONS, WANT_OF_READINGS } from '../../../src/analysis/fronts/front-outcomes.ts';
import { STALLED } from '../../../src/analysis/fronts/stalled.ts';
import type { Campaign, FrontArrival } from '../../../src/analysis/types.ts';
import { campaignOf, sensorOf } from '../../notebook/campaign-of.ts';

/** One sensor alone in its campaign. */
const alone = (did: number | Partial<FrontArrival>, more: Partial<Campaign> = {}) =>
  outcomesOf(campaignOf([sensorOf('C1', 1, 2, did)], more), 'up')[0].outcome;

// Air of 8 C into grain of 18 C: half-way is 13 C, and within 3 C of the air is 11 C.
describe('what a campaign did at a sensor', () => {
  it('passed it where an arrival is known, with or without its fan hours', () => {
    expect(alone(12)).toBe('passed');
    expect(alone({ arrivedMs: 5 })).toBe('passed');
  });
  it('was held where the grain stayed more than half of the way from the air', () => {
    expect(alone({ aheadC: 18, behindC: 16 })).toBe('held');
    expect(alone({ aheadC: 18, behindC: 13.1 })).toBe('held');
    expect(alone({ aheadC: 18, behindC: 12.9 })).toBe('followed');
    // It stopped while passing: what lay behind is not known.
    expect(alone({ aheadC: 18, behindC: null })).toBe('held');
  });
  it('had no front to show where the grain was as cold as the air, whatever the reason says', () => {
    expect(alone({ aheadC: 10.9, behindC: 10.8, why: STALLED })).toBe('followed');
    expect(alone({ aheadC: 11.1, behindC: 11, why: STALLED })).toBe('held');
    // Damp grain is cooler than the air that cools it.
    expect(alone({ aheadC: 7, behindC: 6.5 })).toBe('followed');
  });
  it('passed without a date where the temperature moved at a time that fits no other sensor', () => {
    expect(alone({ why: `${MOVED} at a time that does not fit the front of this cable.` })).toBe('followed');
  });
  it('turns round for warming', () => {
    const warm = { kind: 'warming', airC: 18, grainC: 8 } as const;
    expect(alone({ aheadC: 8, behindC: 12.9 }, warm)).toBe('held');
    expect(alone({ aheadC: 8, behindC: 13.1 }, warm)).toBe('followed');
    expect(alone({ aheadC: 16, behindC: 16 }, warm)).toBe('followed');
  });
  it('can’t tell for want of readings; for any other reason it is not said to have got through', () => {
    expect(alone({ why: `The sensor has no ${WANT_OF_READINGS} in this campaign.` })).toBe('untold');
    expect(alone({ why: 'The front did not get there: the temperature did not move that way.' })).toBe('held');
    expect(alone({ why: 'A reason that nobody thought of.' })).toBe('held');
    expect(alone({ unseen: true, why: 'above the surface' })).toBe('unseen');
  });
  it('can’t tell where the log broke off amid the front, unless readings that came again say what it did', () => {
    const hole = { aheadC: 18, behindC: null, why: `${LACKING} 40 fan hours from amid the front on.` };
    const ended = (endC: number | null) =>
      outcomesOf(campaignOf([sensorOf('C1', 1, 2, hole)]), 'up', () => endC)[0].outcome;
    expect(ended(null)).toBe('untold');
    expect(ended(9)).toBe('followed');
    expect(ended(12.9)).toBe('followed');
    expect(ended(17)).toBe('held');
  });
  it('is not held before a sensor that the front went on to, along the air', () => {
    const below = sensorOf('C1', 1, 1, { aheadC: 18, behindC: 16 });
    const above = sensorOf('C1', 2, 3, 20);
    const elsewhere = sensorOf('C2', 2, 3, 20);
    const first = (list: FrontArrival[], air: 'up' | 'down') => outcomesOf(campaignOf(list), air)[0].outcome;
    expect(first([below, above], 'up')).toBe('followed');
    expect(first([below, above], 'down')).toBe('held');
    expect(first([below, elsewhere], 'up')).toBe('held');
  });
  it('knows reasons that the analysis does give', () => {
    const folder = new URL('../../../src/analysis/fronts/', import.meta.url);
    const words = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
    const all = words.join('\n');
    for (const says of [
      ...TELLING_REASONS.filter((one) => one.says !== MOVED).map((one) => one.says),
      WANT_OF_READINGS,
    ])
      expect(all, says).toContain(says);
  });
});
