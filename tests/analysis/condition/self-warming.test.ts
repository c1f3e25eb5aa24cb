import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alertText } from '../../../src/analysis/condition/condition-alerts.ts';
import { kept } from './kept-bin.ts';

const HEIGHTS = [0.5, 1.5, 2.5, 3.5, 4.5, 5.5];
const CELL = 0.1;
const CELLS = 60;

/**
 * Heat conducted in a column of 6 m by explicit steps of six hours (diffusivity 1.1e-7 m2/s: a quarter of the stable step),
 * with a source of its own; ends at the outdoor temperature.
 */
function conducted(
  startC: (heightM: number) => number,
  outdoorC: (day: number) => number,
  sourceKDay: (heightM: number) => number,
  days: number,
) {
  const temps = Float64Array.from({ length: CELLS }, (_, c) => startC((c + 0.5) * CELL));
  const rows: Float64Array[] = [];
  const r = (1.1e-7 * 21_600) / CELL ** 2;
  for (let step = 0; step < days * 4; step++) {
    rows.push(temps.slice());
    const out = outdoorC(step / 4);
    const before = temps.slice();
    for (let c = 0; c < CELLS; c++) {
      const below = c === 0 ? out : before[c - 1];
      const above = c === CELLS - 1 ? out : before[c + 1];
      temps[c] += r * (below - 2 * before[c] + above) + sourceKDay((c + 0.5) * CELL) / 4;
    }
  }
  return (heightM: number, day: number) =>
    rows[Math.min(rows.length - 1, Math.floor(day * 4))][Math.floor(heightM / CELL)];
}

const still = { days: 90, heightsM: HEIGHTS, fromCentreM: 1 };

describe('warming by itself', () => {
  // Maximum principle of the heat equation (carslaw-jaeger-1959): whatever the start and the weather, conduction alone never does it.
  it('is never told of heat that is only conducted', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -10, max: 30, noNaN: true }), { minLength: 7, maxLength: 7 }),
        fc.double({ min: -15, max: 15, noNaN: true }),
        fc.double({ min: -15, max: 25, noNaN: true }),
        (layers, first, last) => {
          const outdoorC = (day: number) => first + ((last - first) * day) / 90;
          const tempC = conducted(
            (heightM) => layers[Math.floor(heightM)],
            outdoorC,
            () => 0,
            90,
          );
          const { warming } = kept({ ...still, tempC, outdoorC });
          expect(warming.found).toEqual([]);
          expect(warming.judged).toBe(HEIGHTS.length);
        },
      ),
      { seed: 20241001, numRuns: 40 },
    );
  });

  // The sun of a week ago still goes inwards where nothing reads it, from the edge to the last sensor.
  it('is never told of warm weeks that have passed outdoors', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -10, max: 25, noNaN: true }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.double({ min: -20, max: 30, noNaN: true }), { minLength: 13, maxLength: 13 }),
        (layers, weeks) => {
          const outdoorC = (day: number) => weeks[Math.min(12, Math.max(0, Math.floor(day / 7)))];
          const tempC = conducted(
            (heightM) => layers[Math.floor(heightM / 2)],
            outdoorC,
            () => 0,
            90,
          );
          expect(kept({ ...still, tempC, outdoorC }).warming.found).toEqual([]);
        },
      ),
      { seed: 20241101, numRuns: 40 },
    );
  });

  it('is told where a layer heats, with its place, rise and days', () => {
    const hot = (heightM: number) => (Math.abs(heightM - 3.5) < 0.5 ? 0.35 : 0);
    const tempC = conducted(
      () => 8,
      () => 3,
      hot,
      90,
    );
    const { warming, alerts } = kept({ ...still, tempC, outdoorC: () => 3 });
    expect(warming.found.map(({ heightM }) => heightM)).toContain(3.5);
    const place = warming.found.find(({ heightM }) => heightM === 3.5)!;
    expect(place.riseK).toBeGreaterThan(2);
    expect(place.aboveK).toBeGreaterThan(1);
    expect(place.span.toMs - place.span.fromMs).toBeLessThanOrEqual(61 * 86_400_000);
    expect(alerts.map(({ kind }) => kind)).toContain('warmed by itself');
  });

  it('is told of a layer that warms too slowly to be seen within three weeks', () => {
    const hot = (heightM: number) => (Math.abs(heightM - 3.5) < 0.5 ? 0.12 : 0);
    const tempC = conducted(
      () => 8,
      () => 3,
      hot,
      90,
    );
    const within = (days: number) =>
      Math.max(...Array.from({ length: 90 - days }, (_, d) => tempC(3.5, d + days) - tempC(3.5, d)));
    expect(within(22)).toBeLessThan(2);
    const { warming } = kept({ ...still, tempC, outdoorC: () => 3 });
    expect(warming.found.map(({ heightM }) => heightM)).toEqual([3.5]);
    expect(warming.found[0].span.toMs - warming.found[0].span.fromMs).toBeGreaterThan(22 * 86_400_000);
    expect(warming.found[0].aboveK).toBeGreaterThan(1);
    // Not above what another sensor of the bin had at the beginning, however far off: heat goes far in two months.
    const warmBelow = (heightM: number, day: number) => tempC(heightM, day) + (heightM === 0.5 ? 12 : 0);
    expect(kept({ ...still, tempC: warmBelow, outdoorC: () => 3 }).warming.found).toEqual([]);
  });

  // Days of 25 °C with the sun on the steel are above all grain here, but two metres of grain hardly feel it within weeks.
  it('is told beside a warm day outdoors, by what of that comes so far in', () => {
    const hot = (heightM: number) => (Math.abs(heightM - 3.5) < 0.5 ? 0.35 : 0);
    const outdoorC = (day: number) => (day < 12 ? 25 : 3);
    const tempC = conducted(() => 8, outdoorC, hot, 60);
    const by = (fromCentreM: number) => kept({ ...still, days: 14, fromCentreM, tempC, outdoorC }).warming.found;
    expect(by(3.2).map(({ heightM }) => heightM)).toContain(3.5);
    // A hand from the wall it does.
    expect(by(4.9)).toEqual([]);
  });

  it('is told within three days of rest where it is far and fast, and else needs five', () => {
    const fanOn = (day: number) => day < 20 || day > 23;
    const rises = (aDay: number) => (_: number, day: number) => 12 + aDay * Math.min(4, Math.max(0, day - 20));
    const by = (aDay: number) => kept({ ...still, days: 40, tempC: rises(aDay), fanOn, outdoorC: () => 5 }).warming;
    const inside = by(4).found.filter(({ heightM }) => heightM > 1 && heightM < 5);
    expect(inside).toHaveLength(4);
    expect(by(4)).toMatchObject({ why: null });
    expect(by(1.5)).toMatchObject({ found: [], judged: 0, why: 'No log tells that every fan rested for 5 days.' });
  });

  // Sensors farther apart than heat reaches: a cooling front stopped half a metre above the lower one, whose grain the warm grain
  // that the upper one reads warms by conduction alone.
  it('is not told of heat that comes from grain below the next sensor up, however far that one hangs', () => {
    const tempC = conducted(
      (heightM) => (heightM < 2.9 ? 4 : 20),
      () => 5,
      () => 0,
      90,
    );
    const by = (heightsM: readonly number[]) => kept({ ...still, heightsM, tempC, outdoorC: () => 5 }).warming;
    expect(tempC(2.5, 21) - tempC(2.5, 0)).toBeGreaterThan(2);
    expect(by([1, 2.5, 5])).toMatchObject({ found: [], judged: 3 });
    // Nothing reads the grain under 2.5 m, and the floor is too far off to bound it: that place is not judged.
    expect(by([2.5, 5])).toMatchObject({ found: [], judged: 1 });
  });

  // Bulk grain leaves by a funnel from the surface (common practice): what the sun warmed up there then lies around the sensors below.
  it('is not told of warm grain that drawing the bin down brings past a sensor', () => {
    const heightsM = [1, 3, 5, 7, 9, 11];
    // Within a day and a quarter: as slowly as still passes for warming by itself.
    const past = (day: number) => Math.min(20, 5 + 11.9 * Math.max(0, day - 40));
    const tempC = (heightM: number, day: number) => (heightM > 10 ? 20 : heightM > 2 ? past(day) : 5);
    const of = (depths: { day: number; depthM: number }[]) =>
      kept({ ...still, fromCentreM: 0, heightsM, tempC, depths, outdoorC: () => 10 }).warming;
    const drawn = of([
      { day: 0, depthM: 12 },
      { day: 40, depthM: 8 },
    ]);
    expect(drawn.found).toEqual([]);
    expect(drawn.judged).toBe(6);
    // Had nothing been drawn, nothing else would explain it.
    expect(of([{ day: 0, depthM: 12 }]).found.length).toBeGreaterThan(0);
  });

  // Corn of 26 % at 70 °F loses 0.5 % of its dry matter in 5 days (Minnesota table). At 15.7 MJ/kg of matter burnt and 2.8 kJ/K for each
  // kg of the dry matter (both from memory) that is 28 K, 5.6 K a day.
  it('is told of wet grain that heats all over right after filling', () => {
    const tempC = (_: number, day: number) => Math.min(45, 21 + 5.6 * day);
    const { warming, alerts } = kept({ ...still, days: 30, tempC, outdoorC: () => 12 });
    expect(warming.found).toHaveLength(HEIGHTS.length);
    // One bin, one alert, of the place that stands out most.
    const [alert, ...more] = alerts.filter(({ kind }) => kind === 'warmed by itself');
    expect(more).toEqual([]);
    expect(alert).toMatchObject({ others: HEIGHTS.length - 1 });
    expect(alertText(alert)).toContain('above all that lay near it; so did 5 other places.');
    const most = Math.max(...warming.found.map(({ aboveK }) => aboveK));
    expect(alert).toMatchObject({ found: { aboveK: most } });
  });

  it('is not told of a sensor that jumps between two readings, nor of grain that comes in while nobody says when', () => {
    const jump = (heightM: number, day: number) => (heightM === 3.5 && day > 40 ? 13 : 8);
    const sensor = kept({ ...still, tempC: jump, outdoorC: () => 3 }).warming;
    expect(sensor.found).toEqual([]);
    expect(sensor.judged).toBe(HEIGHTS.length);
    const filling = (heightM: number, day: number) => (day > 20 + heightM / 10 ? 26 : 10);
    expect(kept({ ...still, filled: false, tempC: filling, outdoorC: () => 10 }).warming.found).toEqual([]);
  });

  // Read by the hour, a jump falls into a step of six hours and is shared by two of them: 4 K as 2 and 2.
  it.each([2.5, 4, 6, 20])('is not told of a sensor that jumps by %d K, wherever in a step', (byK) => {
    for (const part of [0, 0.3, 0.5, 0.8]) {
      const noise = (day: number) => 0.15 * Math.sin(40 * day);
      const tempC = (heightM: number, day: number) => {
        if (heightM !== 3.5) return 8;
        return 8 + noise(day) + byK * Math.min(1, Math.max(0, day - 40.125) < 0.2 ? (day > 40.1 ? part : 0) : 1);
      };
      const { warming } = kept({ ...still, tempC, outdoorC: () => 3 });
      expect(warming.found).toEqual([]);
      expect(warming.judged).toBe(HEIGHTS.length);
    }
  });

  // The same once a day, over a year's readings by hand: up between two days, level before and after.
  it('is not told of a jump between readings a day apart, but of grain that rises from day to day', () => {
    const daily = (of: (day: number) => number) => (heightM: number, day: number) =>
      Math.abs((day % 1) - 0.375) > 0.01 ? null : heightM === 3.5 ? of(Math.floor(day)) : 8;
    const by = (of: (day: number) => number) => kept({ ...still, tempC: daily(of), outdoorC: () => 3 }).warming.found;
    expect(by((day) => (day > 40 ? 14 : 8))).toEqual([]);
    expect(by((day) => 8 + Math.min(12, Math.max(0, 3 * (day - 40))))).toHaveLength(1);
    expect(by((day) => 8 + Math.min(30, Math.max(0, 15 * (day - 40))))).toHaveLength(1);
  });

  // How fast very wet corn heats at most nobody was found to publish; but what goes on for a day and more is no jump, however fast.
  it.each([12, 15, 18, 24])('is told of very wet corn that heats by %d K a day', (aDay) => {
    const tempC = (_: number, day: number) => Math.min(48, 21 + aDay * Math.max(0, day - 6.4));
    const { warming } = kept({ ...still, days: 30, tempC, outdoorC: () => 12 });
    expect(warming.found).toHaveLength(HEIGHTS.length);
  });

  it('is not told of a front that the fan drives', () => {
    const tempC = (heightM: number, day: number) => (day * 0.5 > heightM ? 20 : 5);
    const { warming } = kept({ ...still, tempC, fanOn: () => true, outdoorC: () => 20 });
    expect(warming.found).toEqual([]);
    expect(warming.why).toContain('rested for 5 days');
  });

  it('is not told near the outside where nobody knows the weather, nor without a fan log', () => {
    const hot = (heightM: number) => (heightM < 1 ? 0.4 : 0);
    const tempC = conducted(
      () => 8,
      () => 3,
      hot,
      90,
    );
    expect(kept({ ...still, tempC, outdoorC: () => 3 }).warming.found.map(({ heightM }) => heightM)).toContain(0.5);
    const blind = kept({ ...still, tempC, weather: false }).warming;
    expect(blind.found.map(({ heightM }) => heightM)).not.toContain(0.5);
    expect(blind.judged).toBeLessThan(HEIGHTS.length);
    expect(kept({ ...still, tempC, fan: false }).warming).toMatchObject({
      found: [],
      judged: 0,
      why: 'No log tells when the fans of this bin rested.',
    });
    // The log of one of two fans says rest: the other may have run.
    expect(kept({ ...still, tempC, fansTold: false }).warming).toMatchObject({ found: [], judged: 0 });
  });

  it('is watched throughout in a bin that has no fan: its grain is always at rest', () => {
    const hot = (heightM: number) => (Math.abs(heightM - 3.5) < 0.5 ? 0.35 : 0);
    const tempC = conducted(
      () => 8,
      () => 3,
      hot,
      90,
    );
    const { warming, roofHours } = kept({ ...still, tempC, outdoorC: () => 3, noFan: true });
    expect(warming.found.map(({ heightM }) => heightM)).toContain(3.5);
    expect(warming.days).toBe(90);
    expect(roofHours.why).toBe('This bin has no fan.');
  });
});
