import { describe, expect, it } from 'vitest';
import { frontFinding } from '../../../src/analysis/fronts/front-finding.ts';
import { campaignOf, sensorOf } from '../../notebook/campaign-of.ts';

const cable = (id: string, hours: readonly (number | object)[]) =>
  hours.map((did, i) => sensorOf(id, i + 1, 1 + 2 * i, did));

describe('what a campaign came to', () => {
  it('through everywhere: after the last arrival, the rest ran on, both good to six hours', () => {
    const found = frontFinding(campaignOf([...cable('C1', [5, 15, 40])], { fanHours: 44 }), 'up');
    expect(found).toMatchObject({ through: true, seen: 3 });
    expect(found.throughHours).toEqual({ value: 40, interval: [34, 46], why: null });
    // 44 − 40 ran on; not less than none, not more than all 44
    expect(found.afterHours).toEqual({ value: 4, interval: [0, 10], why: null });
  });
  it('not through while one sensor is held, and no hours then', () => {
    const found = frontFinding(campaignOf(cable('C1', [5, 15, { aheadC: 18, behindC: 17 }])), 'up');
    expect(found).toMatchObject({ through: false, whole: true });
    expect(found.held.map((one) => one.sensor)).toEqual([3]);
    expect(found.throughHours).toMatchObject({ value: null, why: 'The front did not reach every sensor.' });
  });
  it('is no whole front that passed few, or of which few can tell', () => {
    const cool = { aheadC: 9, behindC: 8.5 };
    expect(frontFinding(campaignOf(cable('C1', [5, cool, cool])), 'up')).toMatchObject({
      whole: false,
      through: false,
    });
    expect(frontFinding(campaignOf(cable('C1', [5, 15, cool])), 'up')).toMatchObject({ whole: true, through: true });
    expect(
      frontFinding(campaignOf(cable('C1', [5, { why: 'no good readings' }, { why: 'no good readings' }])), 'up').whole,
    ).toBe(false);
  });
  it('is whole where a hole of the log took the dates and the grain was cold behind it', () => {
    const hole = { aheadC: 18, behindC: null, why: 'Good readings are lacking for 40 fan hours around the arrival.' };
    const list = cable('C1', [5, hole, hole]);
    expect(frontFinding(campaignOf(list), 'up', () => 9)).toMatchObject({ whole: true, through: true });
    expect(frontFinding(campaignOf(list), 'up', () => null)).toMatchObject({ whole: false, through: false });
  });
  it('without the fan hours of an arrival the hours until through are not known', () => {
    const found = frontFinding(campaignOf(cable('C1', [5, 15, { arrivedMs: 9 }])), 'up');
    expect(found.through).toBe(true);
    expect(found.throughHours).toMatchObject({ value: null, why: expect.stringMatching(/cannot be dated/) });
    // The same where the last sensor went half of the way undated (18 to 12 C, air of 8 C), but not where it was cold before.
    const last = (aheadC: number) =>
      frontFinding(campaignOf(cable('C1', [5, 15, { aheadC, behindC: aheadC - 6 }])), 'up');
    expect(last(18)).toMatchObject({ through: true, throughHours: { value: null } });
    expect(last(10)).toMatchObject({ through: true, throughHours: { value: 15 } });
  });
});

describe('the slowest sensor for its height', () => {
  it('is held against the median of the other cables, between their sensors where they hang otherwise', () => {
    // At 3 m: C1 had it at 20, C2 at 22, C3 half-way between 2 m (14) and 4 m (30), so at 22, C4 at 50: behind the median of 20, 22, 22.
    const found = frontFinding(
      campaignOf([
        sensorOf('C1', 1, 3, 20),
        sensorOf('C2', 1, 3, 22),
        sensorOf('C3', 1, 2, 14),
        sensorOf('C3', 2, 4, 30),
        sensorOf('C4', 1, 3, 50),
      ]),
      'up',
    );
    expect(found.slowest?.arrival.cable).toBe('C4');
    expect(found.slowest?.behindHours).toBeCloseTo(28, 9);
  });
  it('is told of no single cable, of no cables that share no height, and never as a negative lag', () => {
    const slowest = (list: Parameters<typeof campaignOf>[0]) => frontFinding(campaignOf(list), 'up').slowest;
    expect(slowest(cable('C1', [5, 90]))).toBeNull();
    expect(slowest([...cable('C1', [5]), sensorOf('C2', 1, 6, 60)])).toBeNull();
    expect(slowest([...cable('C1', [5, 15]), ...cable('C2', [5, 15])])).toBeNull();
    // Arrivals that run backwards: A falls from 10 to 0 between 1 and 3 m, B rises from 0 to 10 between 2 and 4 m; both lie before the other.
    expect(
      slowest([sensorOf('A', 1, 1, 10), sensorOf('A', 2, 3, 0), sensorOf('B', 1, 2, 0), sensorOf('B', 2, 4, 10)]),
    ).toBeNull();
  });
});
