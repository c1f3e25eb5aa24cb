import { describe, expect, test } from 'vitest';
import { campaignSpeed } from '../../../src/analysis/fronts/campaign-speed.ts';
import type { FrontArrival } from '../../../src/analysis/types.ts';

const arrival = (cable: string, sensor: number, heightM: number, fanHours: number | null): FrontArrival => ({
  cable,
  sensor,
  heightM,
  arrivedMs: fanHours === null ? null : fanHours * 3_600_000,
  fanHours,
  aheadC: 20,
  behindC: 10,
  why: fanHours === null ? 'not there' : null,
});

const cable = (id: string, hoursAMetre: number, startH = 5) =>
  [1, 2, 3, 4, 5].map((m, at) => arrival(id, at + 1, m, startH + hoursAMetre * m));

describe('speed of a front', () => {
  test('a cable passed at 10 h a metre: 0.1 m/h, whenever the front set out', () => {
    const { speedMH, cables } = campaignSpeed(cable('C1', 10, 17), 'up');
    expect(speedMH.value).toBeCloseTo(0.1, 10);
    expect(cables).toEqual([{ cable: 'C1', speedMH: expect.closeTo(0.1, 10), sensors: 5 }]);
    // Sum of squares of 1 to 5 m about 3 m is 10 m2: sd of the slope (6 / 1.645) / sqrt(10 x 0.9) = 1.216 h/m; cables 12 % of 10 h/m
    // = 1.2; together 1.708; all three degrees of freedom are the assumption's, t 2.353: reach 4.02 h/m.
    expect(speedMH.interval![0]).toBeCloseTo(1 / 14.02, 4);
    expect(speedMH.interval![1]).toBeCloseTo(1 / 5.98, 4);
  });

  test('air drawn down: the top sensor is passed first', () => {
    const down = [1, 2, 3, 4].map((m, at) => arrival('C1', at + 1, m, 8 * (5 - m)));
    expect(campaignSpeed(down, 'down').speedMH.value).toBeCloseTo(1 / 8, 10);
  });

  test('one arrival told 40 h late does not move the median of ten slopes', () => {
    // In the middle it raises two slopes and lowers two; at the top it raises four of ten (least squares would tell 10 + 40 x 2 / 10 = 18 h a metre).
    for (const late of [2, 4]) {
      const told = cable('C1', 10).map((one, at) => (at === late ? { ...one, fanHours: one.fanHours! + 40 } : one));
      expect(campaignSpeed(told, 'up').cables[0].speedMH).toBeCloseTo(0.1, 10);
    }
  });

  test('a slow cable among equal ones widens the interval, and both cables are told', () => {
    const even = campaignSpeed([...cable('C1', 10), ...cable('C2', 10), ...cable('C3', 10)], 'up').speedMH;
    const uneven = campaignSpeed([...cable('C1', 10), ...cable('C2', 10), ...cable('C3', 16)], 'up');
    expect(uneven.speedMH.value).toBeCloseTo(1 / 12, 10);
    const width = ([low, high]: [number, number]) => 1 / low - 1 / high;
    expect(width(uneven.speedMH.interval!)).toBeGreaterThan(1.3 * width(even.interval!));
    expect(uneven.cables.map((one) => one.speedMH)).toEqual([0.1, 0.1, 1 / 16].map((one) => expect.closeTo(one, 10)));
  });

  test('a front that passes 4 m within two hours is faster than arrivals can tell', () => {
    const { speedMH } = campaignSpeed(cable('C1', 0.5), 'up');
    expect(speedMH.value).toBeNull();
    expect(speedMH.why).toMatch(/too soon after each other/);
  });

  test('no two dated sensors, no speed', () => {
    expect(campaignSpeed([arrival('C1', 1, 1, 4), arrival('C2', 2, 2, 9)], 'up').speedMH.why).toMatch(/no two sensors/);
  });
});
