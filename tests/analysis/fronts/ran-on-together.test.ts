import { describe, expect, it } from 'vitest';
import { frontGroups, ranOnTogether } from '../../../src/analysis/fronts/ran-on-together.ts';
import { seasonFront } from '../../../src/analysis/fronts/season-front.ts';
import { estimate } from '../../../src/base/estimate.ts';
import { sharedFrontLead } from '../../../src/notebook/front-shared.ts';
import { campaignOf, sensorOf } from '../../notebook/campaign-of.ts';
import { exampleInput } from '../../report/example-review.ts';

const example = exampleInput().review.bins[0];
/** A bin whose last sensor is passed after so many of 100 fan hours; its part of the fan: 400 h for 100 of energy. */
const front = (id: string, lastHours: number | null, fanIds = ['FS']) => {
  const campaigns = lastHours === null ? [] : [campaignOf([sensorOf('C1', 1, 1, 10), sensorOf('C1', 2, 3, lastHours)])];
  return seasonFront({
    ...example,
    bin: { ...example.bin, id, name: `Bin ${id}`, fanIds },
    fronts: { campaigns, why: null },
    fan: { ...example.fan, hours: estimate(400, 400, 400), energyCost: estimate(100, 100, 100) },
  });
};

describe('hours that a shared fan ran on', () => {
  it('count from when the last of its bins is through', () => {
    // Bin S is through after 30 h, bin N after 40: of 100 h 60 were run on after both (54 to 66), not 70.
    const both = ranOnTogether([front('S', 30), front('N', 40)]);
    expect(both.hours).toEqual({ value: 60, interval: [54, 66], why: null });
    expect(both.last?.review.bin.id).toBe('N');
    // Each bin carries 0.25 of a fan hour's 0.50.
    expect(both.cost.value).toBeCloseTo(30, 9);
    expect(ranOnTogether([front('S', 30)]).hours.value).toBe(70);
  });

  it('are not told where a bin of the fan is not known to be through', () => {
    const open = ranOnTogether([front('S', 30), front('N', null)]);
    for (const told of [open.hours, open.cost]) {
      expect(told.value).toBeNull();
      expect(told.why).toBe(
        'Fan FS also serves Bin N, of which nobody can tell when its front was through: until then the hours were needed.',
      );
    }
  });

  it('name the fan that the open bin has, where bins hang together by several', () => {
    const chain = [front('A', 30, ['FA']), front('B', 40, ['FA', 'FS']), front('C', null, ['FS'])];
    expect(ranOnTogether(chain).hours.why).toMatch(/^Fan FS also serves Bin C, /);
    const told = chain.map((one) => sharedFrontLead(one, chain));
    expect(told[0]).toBe(' Its fan serves Bin B too: hours run on here were needed there until Bin B was through.');
    expect(told[1]).toContain(' Its fans serve Bin A and Bin C too: ');
    expect(told[1]).toContain(' until Bin A and Bin C were through.');
  });

  it('of bins with fans of their own are each bin’s', () => {
    const groups = frontGroups([front('S', 30), front('A', 20, ['FA']), front('N', 40)]);
    expect(groups.map((group) => group.map(({ review }) => review.bin.id))).toEqual([['S', 'N'], ['A']]);
  });
});
