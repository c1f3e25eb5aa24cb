import { describe, expect, it } from 'vitest';
import { binFronts } from '../../../src/analysis/fronts/bin-fronts.ts';
import { outcomesOf } from '../../../src/analysis/fronts/front-outcomes.ts';
import { placeInHoles } from '../../../src/analysis/fronts/place-in-holes.ts';
import { HOUR_MS, START_MS } from './invented-bin.ts';
import { expectHours, tell } from './sharp-front.ts';

// The sharp front of `sharp-front.ts`: half-way at ten fan hours a metre, sensors at 1 to 6 m, the fan on from hour 24.

describe('a hole of the temperature log', () => {
  it('does not take the first reading after a silence for grain that the front has not reached', () => {
    // Silent from hour 10 to 45, the fan on from 24: 21 fan hours unseen, in which the front came to 1 m (10) and 2 m (20). Beyond, it
    // goes by ten hours a metre.
    const spoil = (_: number, hour: number, tempC: number) => (hour > 10 && hour < 45 ? Number.NaN : tempC);
    const [one] = binFronts(tell({ on: [[24, 200]], spoil })).campaigns;
    expectHours(one.arrivals, [10, 20, 30, 40, 50, 60], 1);
    for (const { fanHoursInterval, placed, why } of one.arrivals.slice(0, 2)) {
      expect([placed, why]).toEqual([true, null]);
      expect(fanHoursInterval![0]).toBeLessThanOrEqual(6);
      expect(fanHoursInterval![1]).toBeGreaterThanOrEqual(21);
    }
    expect(one.arrivals.slice(2).some((each) => each.placed)).toBe(false);
  });

  it('places an arrival within a gap of two days by the front’s pace, its interval the gap', () => {
    // Silent from hour 40 to 89: the last reading 15 fan hours after the start, the next after 66.
    const story = tell({ on: [[24, 144]] });
    story.sensors[3].tempFlags.fill(8, 40, 90);
    const [{ arrivals }] = binFronts(story).campaigns;
    expectHours(arrivals, [10, 20, 30, 40, 50, 60], 0.1);
    expect(arrivals[3]).toMatchObject({ placed: true, why: null, fanHoursInterval: [15, 66] });
    expect(arrivals[3].arrivedInterval).toEqual([39, 90].map((hour) => START_MS + hour * HOUR_MS));
    expect(arrivals.filter((one) => one.placed)).toHaveLength(1);
  });

  it('gives no arrival from across a gap of two days where no sensor beyond is told', () => {
    const story = tell({ on: [[24, 144]] });
    for (const one of story.sensors.slice(3)) one.tempFlags.fill(8, 40, 90);
    const [{ arrivals }] = binFronts(story).campaigns;
    expectHours(arrivals, [10, 20, 30, null, null, null], 0.1);
    for (const { why } of arrivals.slice(3)) expect(why).toMatch(/lacking for/);
  });

  it('tells by one reading amid a campaign, by hand, which grain was as cold as the air and which the front had not reached', () => {
    // The fan on from hour 24 to 44; the one reading at hour 35, 11 fan hours on: 1 m was passed at 10, the others stood at 24 C.
    const spoil = (_: number, hour: number, tempC: number) => (hour === 35 ? tempC : Number.NaN);
    const [one] = binFronts(tell({ on: [[24, 44]], spoil })).campaigns;
    expectHours(one.arrivals, [null, null, null, null, null, null], 1);
    expect(one.arrivals.map(({ aheadC }) => aheadC)).toEqual([10, 24, 24, 24, 24, 24]);
    expect(outcomesOf(one, 'up').map(({ outcome }) => outcome)).toEqual(['followed', ...Array(5).fill('held')]);
  });

  it('tells of grain as cold as the air before the campaign, and warming in it, that it had no front to show', () => {
    // Of air of 10 C: 1 m stood at 11 C after an earlier night, and is at 12 C in the end; the others as the front has them.
    const spoil = (sensor: number, hour: number, tempC: number) =>
      sensor === 1 ? 11 + Math.max(0, hour - 24) / 150 : tempC;
    const [one] = binFronts(tell({ on: [[24, 54]], hours: 120, spoil })).campaigns;
    expect(one.arrivals[0]).toMatchObject({ arrivedMs: null, aheadC: expect.closeTo(11, 1) });
    const [first] = outcomesOf(one, 'up');
    expect(first.outcome).toBe('followed');
  });

  it('says of a sensor whose log ends before the front comes that readings are lacking, not that nothing moved', () => {
    const story = tell({ on: [[24, 144]] });
    // The front comes to the fourth sensor at hour 64; the last good reading is that of hour 59, the fan stops at 144.
    story.sensors[3].tempFlags.fill(8, 60);
    const [{ arrivals }] = binFronts(story).campaigns;
    expectHours(arrivals, [10, 20, 30, null, 50, 60], 0.1);
    expect(arrivals[3].why).toMatch(/^Good readings are lacking for 85 fan hours/);
    expect(arrivals[3].unseen).toBe(true);
  });

  it('does not drop the campaign of a run under way because most sensors fell silent in it', () => {
    // The air turns at hour 130, ten fan hours after the last sensor was passed, and the fan runs on.
    const story = tell({ on: [[24, 300]], hours: 324 });
    for (const log of [story.plenum, story.weather]) log.tempC.fill(24, 130);
    for (const one of story.sensors.slice(2)) one.tempFlags.fill(8, 48);
    const { campaigns } = binFronts(story);
    expect(campaigns[0]?.kind).toBe('cooling');
    expectHours(campaigns[0].arrivals, [10, 20, null, null, null, null], 0.1);
    for (const { why } of campaigns[0].arrivals.slice(2)) expect(why).toMatch(/lacking/);
  });

  it('of under twelve fan hours that all sensors share puts none of them at its start', () => {
    // Silent from hour 27 to 36, and the fan stops at 44: sensor 1 is passed at hour 34, ten fan hours after the start, and none beyond is
    // told. Readings stand at 2 and 13 fan hours: amid them is 7.5.
    const spoil = (_: number, hour: number, tempC: number) => (hour > 26 && hour < 37 ? Number.NaN : tempC);
    const [one] = binFronts(tell({ on: [[24, 44]], spoil })).campaigns;
    const [first] = one.arrivals;
    expect(first).toMatchObject({ placed: true, fanHours: 7.5 });
    expect(first.fanHoursInterval![0]).toBeLessThanOrEqual(2);
    expect(first.fanHoursInterval![1]).toBeGreaterThanOrEqual(13);
    expect(one.speed?.speedMH.value).toBeNull();
  });
});

describe('where sensors of a hole are placed', () => {
  const at = (fromEntryM: number, toldH: number | null, hole: [number, number] | null = null) => ({
    fromEntryM,
    toldH,
    crossing: hole === null ? null : { hole },
  });
  it('by one pace between those told before and after, never out of the hole', () => {
    // Told at 1 m after 10 h and at 4 m after 40 h: 2 m is due at 20 h, 3 m at 30 h; the second log came back at 27 h.
    const places = [at(1, 10), at(2, null, [12, 38]), at(3, null, [12, 27]), at(4, 40)];
    expect(placeInHoles(places, null)).toEqual([null, 20, 27, null]);
  });
  it('by the pace of those beyond where none is told before: when the front entered is not known', () => {
    // Cold air came late: told at 2 m after 40 h and at 4 m after 60 h, so at 1 m after 30 h; at 0.5 m 25 h, before its log broke off at 27 h.
    const places = [at(0.5, null, [27, 39]), at(1, null, [-5, 39]), at(2, 40), at(4, 60)];
    expect(placeInHoles(places, null)).toEqual([27, 30, null, null]);
  });
  it('by the pace of the other cables where one is told beyond; not at all without one, or without a pace', () => {
    expect(placeInHoles([at(1, null, [-5, 15]), at(2, 24)], 12)).toEqual([12, null]);
    expect(placeInHoles([at(1, null, [-5, 15]), at(2, 24)], null)).toEqual([null, null]);
    expect(placeInHoles([at(1, 10), at(2, null, [12, 38])], 12)).toEqual([null, null]);
  });
});

describe('a hole of the fan log', () => {
  it('tells no fan hours past a time that the fan log does not know', () => {
    const { campaigns } = binFronts(
      tell({
        on: [
          [24, 49],
          [61, 144],
        ],
        unknown: [[49, 61]],
      }),
    );
    expectHours(campaigns[0].arrivals, [10, 20, null, null, null, null], 0.6);
    expect(campaigns[0].arrivals[3].arrivedMs).not.toBeNull();
    expect(campaigns[0].arrivals[3].why).toMatch(/12 hours/);
  });

  it('leaves the clock time to the readings: no arrival is moved to the hole’s end', () => {
    // Eight hours each night; silent for two days from hour 76 on, with 4, 8 and 4 hours of three nights in it. The fan ran
    // through them all the same, so the clock times are those of the log without the hole.
    const on = Array.from({ length: 14 }, (_, day): [number, number] => [24 + 24 * day, 32 + 24 * day]);
    const whole = binFronts(tell({ on, hours: 400 })).campaigns[0].arrivals;
    const holed = binFronts(tell({ on, hours: 400, unknown: [[76, 124]] })).campaigns[0].arrivals;
    const inHole = whole.filter(({ arrivedMs }) => {
      const hour = (arrivedMs! - START_MS) / HOUR_MS;
      return hour > 76 && hour < 124;
    });
    expect(inHole.length).toBeGreaterThan(0);
    whole.forEach(({ arrivedMs }, i) => {
      expect(Math.abs(holed[i].arrivedMs! - arrivedMs!) / HOUR_MS, `sensor ${i + 1}`).toBeLessThanOrEqual(2);
    });
    const last = holed[5];
    expect(last.fanHours).toBeNull();
    // Known to have run: 60 hours less the 16 in the hole; at the most all 48 of it more; an arrival is good to 6.
    expect(last.why).toMatch(/does not tell for 48 hours before the arrival: it came after 38 to 98 fan hours/);
  });
});
