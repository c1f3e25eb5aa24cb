import { describe, expect, it } from 'vitest';
import { binFronts } from '../../../src/analysis/fronts/bin-fronts.ts';
import type { FrontArrival } from '../../../src/analysis/types.ts';
import { HOUR_MS, START_MS } from './invented-bin.ts';
import { expectHours, tell } from './sharp-front.ts';

const hoursOf = (arrivals: readonly FrontArrival[]) => arrivals.map(({ fanHours }) => fanHours);

describe('a sharp front of known speed', () => {
  it('arrives ten fan hours a metre later, told in clock time too', () => {
    const { campaigns, why } = binFronts(tell({ on: [[24, 144]] }));
    expect(why).toBeNull();
    expect(campaigns).toHaveLength(1);
    const [one] = campaigns;
    expect(one).toMatchObject({ number: 1, kind: 'cooling', airFrom: 'plenum', airC: 10 });
    expect(one.grainC).toBeCloseTo(24, 9);
    expect(one.span.fromMs).toBe(START_MS + 24 * HOUR_MS);
    expectHours(one.arrivals, [10, 20, 30, 40, 50, 60], 0.1);
    one.arrivals.forEach(({ arrivedMs, aheadC, behindC }, i) => {
      expect(((arrivedMs ?? 0) - START_MS) / HOUR_MS - 24).toBeCloseTo(one.arrivals[i].fanHours ?? Number.NaN, 6);
      expect(aheadC).toBeCloseTo(24, 6);
      expect(behindC).toBeCloseTo(10, 6);
    });
  });

  // A line between two readings on both sides of a sharp front misses it by half the interval at most.
  it.each([1, 2, 3, 4, 6])('logged every %i h, within half an interval', (everyH) => {
    const { campaigns } = binFronts(tell({ on: [[24, 144]], everyH }));
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], everyH / 2 + 0.1);
  });

  it('counts only fan hours when the fan runs eight hours a night', () => {
    const nights = Array.from({ length: 14 }, (_, day): [number, number] => [24 + 24 * day, 32 + 24 * day]);
    const { campaigns } = binFronts(tell({ on: nights, hours: 400 }));
    expect(campaigns).toHaveLength(1);
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], 0.6);
    // 10 fan hours: a whole first night and two hours of the second.
    const clock = ((campaigns[0].arrivals[0].arrivedMs ?? 0) - START_MS) / HOUR_MS;
    expect(Math.abs(clock - 50)).toBeLessThanOrEqual(0.6);
  });

  it('stands still through a rest of two and a half days', () => {
    const { campaigns } = binFronts(
      tell({
        on: [
          [24, 49],
          [109, 180],
        ],
        hours: 260,
      }),
    );
    expect(campaigns).toHaveLength(1);
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], 0.6);
  });

  it('ends with a rest of four days; the second campaign carries the front on, its fan hours from zero', () => {
    // 32 fan hours, 96 h rest: the front stands at 3.2 m. In the second campaign 0.8 m more is eight hours.
    const { campaigns } = binFronts(
      tell({
        on: [
          [24, 64],
          [160, 240],
        ],
        hours: 280,
      }),
    );
    expect(campaigns.map(({ number, kind }) => [number, kind])).toEqual([
      [1, 'cooling'],
      [2, 'cooling'],
    ]);
    expectHours(campaigns[0].arrivals.slice(0, 3), [10, 20, 30], 0.1);
    expect(hoursOf(campaigns[0].arrivals.slice(4))).toEqual([null, null]);
    expect(hoursOf(campaigns[1].arrivals.slice(0, 3))).toEqual([null, null, null]);
    expectHours(campaigns[1].arrivals.slice(4), [10, 20], 0.6);
    expect(campaigns[1].arrivals[0].why).toMatch(/did not move|no front/);
  });

  it('says why at sensors that it never reached', () => {
    const { campaigns } = binFronts(tell({ on: [[24, 61]] }));
    expectHours(campaigns[0].arrivals, [10, 20, 30, null, null, null], 0.1);
    for (const { why, arrivedMs } of campaigns[0].arrivals.slice(3)) {
      expect(arrivedMs).toBeNull();
      expect(why).toMatch(/front did not get there|no front|passing/);
    }
  });

  it('comes from the top where air is drawn down', () => {
    const { campaigns } = binFronts(tell({ on: [[24, 144]], air: 'down' }));
    expect(campaigns[0].airFrom).toBe('weather');
    expectHours(campaigns[0].arrivals, [55, 45, 35, 25, 15, 5], 0.1);
  });

  it('is a warming front in spring', () => {
    const { campaigns } = binFronts(tell({ on: [[24, 144]], aheadC: 2, behindC: 13 }));
    expect(campaigns[0].kind).toBe('warming');
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], 0.1);
  });
});

describe('what is no front', () => {
  it('air two kelvin cooler begins no campaign', () => {
    const { campaigns, why } = binFronts(tell({ on: [[24, 144]], aheadC: 12, behindC: 10 }));
    expect(campaigns).toEqual([]);
    expect(why).toMatch(/never clearly/);
  });

  it('air little over two kelvin cooler does, where evaporation cools the grain by five', () => {
    const { campaigns } = binFronts(tell({ on: [[24, 144]], aheadC: 14, behindC: 9, airC: 11.7 }));
    expect(campaigns).toHaveLength(1);
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], 0.1);
  });

  it('grain that changes by two kelvin in cooler air saw no front', () => {
    const { campaigns } = binFronts(tell({ on: [[24, 74]], aheadC: 12, behindC: 10, airC: 8 }));
    for (const { fanHours, why } of campaigns[0].arrivals.slice(0, 2)) {
      expect(fanHours).toBeNull();
      expect(why).toMatch(/changed by less than 3 °C/);
    }
  });

  it('five fan hours are no campaign', () => {
    expect(binFronts(tell({ on: [[24, 29]] })).campaigns).toEqual([]);
    expect(binFronts(tell({ on: [[24, 31]] })).campaigns).toHaveLength(1);
  });

  it('damp grain cooler than the air that cools it is no warming campaign', () => {
    // Air 14 C, grain behind the front 9 C by evaporation: the grain mean falls through the air's.
    const { campaigns } = binFronts(tell({ on: [[24, 700]], aheadC: 24, behindC: 9, airC: 14, hours: 720 }));
    expect(campaigns.map(({ kind }) => kind)).toEqual(['cooling']);
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], 0.1);
    // The same grain after a week of rest: again cooler than the air, for weeks.
    const rested = binFronts(
      tell({
        on: [
          [24, 124],
          [300, 900],
        ],
        aheadC: 24,
        behindC: 9,
        airC: 14,
        hours: 920,
      }),
    );
    expect(rested.campaigns.map(({ kind }) => kind)).toEqual(['cooling']);
  });

  it('names what is lacking', () => {
    const story = tell({ on: [[24, 144]] });
    expect(binFronts({ ...story, bin: { ...story.bin, cables: [] } }).why).toMatch(/No cable/);
    expect(binFronts(tell({ on: [] })).why).toMatch(/no running/);
    expect(binFronts({ ...story, sensors: [] }).why).toMatch(/good temperature readings/);
    expect(binFronts({ ...story, plenum: story.weather }).why).toMatch(/Neither plenum nor weather/);
  });
});

describe('sensors and logs with faults', () => {
  it('leaves flagged readings out, and a sensor without good ones', () => {
    const story = tell({ on: [[24, 144]] });
    story.sensors[1].tempFlags.fill(1);
    story.sensors[2].tempC.fill(99, 30, 40);
    story.sensors[2].tempFlags.fill(2, 30, 40);
    const [{ arrivals }] = binFronts(story).campaigns;
    expectHours(arrivals, [10, null, 30, 40, 50, 60], 0.1);
    expect(arrivals[1].why).toMatch(/no good readings/);
  });

  it('takes the first readings for ahead where none were taken before', () => {
    const story = tell({ on: [[0, 144]] });
    const [one] = binFronts(story).campaigns;
    expectHours(one.arrivals, [10, 20, 30, 40, 50, 60], 0.1);
  });

  it('leaves out a sensor at or above the surface', () => {
    const { campaigns } = binFronts(tell({ on: [[24, 144]], depthM: 5 }));
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, null, null], 0.1);
    expect(campaigns[0].arrivals[4].why).toMatch(/surface/);
  });

  // NDSU Extension: 3 to 5 degF at 4 to 6 in. of water, so 2 K at a dryer's pressure and 0.8 degF an inch; aeration
  // meets one to three inches (common practice): 0.4 to 1.3 K.
  it.each([
    { goal: 'cool' as const, leastC: 10.4, mostC: 11.3 },
    { goal: 'hold' as const, leastC: 10.4, mostC: 11.3 },
    { goal: 'dry' as const, leastC: 11.7, mostC: 12.8 },
    { goal: 'condition' as const, leastC: 11.7, mostC: 12.8 },
  ])('takes outdoor air with the warming of a fan to $goal where no plenum is logged', ({ goal, leastC, mostC }) => {
    const story = tell({ on: [[24, 144]] });
    const bin = { ...story.bin, goal };
    const { campaigns } = binFronts({ ...story, bin, plenum: story.weather, weather: story.plenum });
    expect(campaigns[0].airFrom).toBe('weather');
    expect(campaigns[0].airC).toBeGreaterThanOrEqual(leastC);
    expect(campaigns[0].airC).toBeLessThanOrEqual(mostC);
    expectHours(campaigns[0].arrivals, [10, 20, 30, 40, 50, 60], 0.1);
  });
});
