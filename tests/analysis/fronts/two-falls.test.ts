import { describe, expect, it } from 'vitest';
import { alikeAlong } from '../../../src/analysis/fronts/alike-passages.ts';
import { binFronts } from '../../../src/analysis/fronts/bin-fronts.ts';
import type { FrontsInput } from '../../../src/analysis/fronts/fronts-view.ts';
import { HOUR_MS, inventedBin, START_MS, seriesOf, spansOf } from './invented-bin.ts';

const HEIGHTS_M = [0.5, 1.5, 2.5, 3.5];

/** The fan on from 24 h to `untilH`; the air's temperature, straight between knots of fan hours, comes up at 0.2 m an hour. */
function stepped(knots: readonly [hour: number, tempC: number][], untilH: number, cables: number): FrontsInput {
  const [first, last] = [knots[0], knots[knots.length - 1]];
  const tempOf = (hour: number) => {
    if (hour <= 0) return first[1];
    const i = knots.findIndex(([end]) => end >= hour);
    if (i < 0) return last[1];
    const [[a, from], [b, to]] = [knots[i - 1], knots[i]];
    return from + ((hour - a) / (b - a)) * (to - from);
  };
  const hours = Array.from({ length: 200 }, (_, hour) => hour);
  const times = hours.map((hour) => START_MS + hour * HOUR_MS);
  const at = (hour: number) => Math.min(hour, untilH) - 24;
  const sensors = Array.from({ length: cables }, (_, cable) =>
    HEIGHTS_M.map((heightM, i) =>
      seriesOf(
        `C${cable + 1}`,
        i + 1,
        heightM,
        times,
        hours.map((hour) => tempOf(at(hour) - heightM / 0.2)),
      ),
    ),
  );
  return {
    bin: inventedBin(HEIGHTS_M, cables),
    sensors: sensors.flat(),
    fan: spansOf(
      Uint8Array.from({ length: 200 }, (_, hour) => (hour >= 24 && hour < untilH ? 1 : 0)),
      1,
    ),
    plenum: { timeMs: Float64Array.from(times), tempC: Float64Array.from(hours, (hour) => tempOf(hour - 24)) },
    weather: { timeMs: new Float64Array(0), tempC: new Float64Array(0) },
  };
}

it('of two falls of the air the steeper one is told where the first came back', () => {
  // By hand: the fan runs from 24 h on. What comes up at 0.2 m an hour falls from 26 to 22 C in 12 h, is back at 25 C by 24 h and
  // falls to 20 C by 34 h. Ahead 26 C, behind the steepest change 20 C, half-way 23 C: at 28 h, later by the way up. The first
  // fall went through 23 C too, at 9 h, but was back above it from 16 h on.
  const knots: [hour: number, tempC: number][] = [
    [0, 26],
    [12, 22],
    [24, 25],
    [34, 20],
  ];
  const { campaigns } = binFronts(stepped(knots, 100, 1));
  expect(campaigns[0].kind).toBe('cooling');
  HEIGHTS_M.forEach((heightM, i) => {
    const { fanHours } = campaigns[0].arrivals[i];
    expect(Math.abs((fanHours ?? Number.NaN) - (28 + heightM / 0.2)), `sensor ${i + 1}`).toBeLessThan(1.5);
  });
});

describe('air that falls, stands for two days and falls again', () => {
  // By hand: the fan runs from 24 h on. Up each cable at 0.2 m an hour comes air that falls from 26 to 20 C in 10 h, is at 21 C by 60 h
  // and falls to 12 C by 70 h. The first front: ahead 26 C, behind 20 C and a little, half-way 23 C after 4.8 h. The second: ahead 21 C
  // within 0.2 C, behind 12 C, half-way 16.5 C after 65 h. Each later by the way up.
  const knots: [hour: number, tempC: number][] = [
    [0, 26],
    [10, 20],
    [60, 21],
    [70, 12],
  ];
  const run = (untilH: number) => stepped(knots, untilH, 2);
  it('sends two fronts, each told at every sensor of every cable', () => {
    const { campaigns } = binFronts(run(160));
    expect(campaigns.map(({ kind, number }) => [kind, number])).toEqual([
      ['cooling', 1],
      ['cooling', 2],
    ]);
    const begunH = campaigns.map(({ span }) => (span.fromMs - START_MS) / HOUR_MS - 24);
    expect(begunH[0]).toBe(0);
    expect(begunH[1]).toBeGreaterThan(48);
    expect(begunH[1]).toBeLessThan(66);
    [4.8, 65].forEach((hour, front) => {
      for (const { cable, sensor, heightM, fanHours } of campaigns[front].arrivals) {
        const off = (fanHours ?? Number.NaN) + begunH[front] - (hour + heightM / 0.2);
        expect(Math.abs(off), `front ${front + 1}, ${cable} ${sensor}`).toBeLessThan(1.5);
      }
    });
  });
  it('is one campaign where the fan stops before the second front is half-way up', () => {
    const { campaigns } = binFronts(run(24 + 65 + 9));
    expect(campaigns).toHaveLength(1);
    for (const { sensor, heightM, fanHours } of campaigns[0].arrivals)
      expect(Math.abs((fanHours ?? Number.NaN) - (4.8 + heightM / 0.2)), `sensor ${sensor}`).toBeLessThan(1.5);
  });
});

it('of two falls alike either may be the front’s: the interval holds both', () => {
  // By hand: the fan runs from 24 h on. What comes up at 0.2 m an hour falls from 26 to 22.4 C in 10 h, stands, and falls as fast from
  // 34 h on to 18.8 C at 44 h. By the first step half-way is 24.2 C, after 5 h; by the second (ahead 26, behind 18.8 C) 22.4 C, at 34 h.
  const knots: [hour: number, tempC: number][] = [
    [0, 26],
    [10, 22.4],
    [34, 22.4],
    [44, 18.8],
  ];
  const { campaigns } = binFronts(stepped(knots, 130, 1));
  expect(campaigns).toHaveLength(1);
  for (const { sensor, heightM, fanHours, fanHoursInterval } of campaigns[0].arrivals) {
    const both = [5 + heightM / 0.2, 34 + heightM / 0.2];
    expect(Math.min(...both.map((hour) => Math.abs(hour - Number(fanHours)))), `sensor ${sensor}`).toBeLessThan(3);
    expect(fanHoursInterval?.[0], `sensor ${sensor}`).toBeLessThan(both[0]);
    expect(fanHoursInterval?.[1], `sensor ${sensor}`).toBeGreaterThan(both[1]);
  }
});

it('reaches to another passage that one sensor’s readings speak for as much, or half of a cable’s nearly as much', () => {
  const at = (fanHours: number, weight: number) => ({ fanHours, weight, aheadC: 20, behindC: 10 });
  const of = (chosen: ReturnType<typeof at>, ...others: ReturnType<typeof at>[]) => ({
    chosen,
    passages: [chosen, ...others],
  });
  // Alone: 1.8 of 2 speaks for 12 h, but the front was at the sensor below only at 20 h; 1.8 for 50 h; 1.79 does not do.
  const alone = [of(at(20, 2)), of(at(30, 2), at(12, 1.8), at(50, 1.8), at(60, 1.79)), of(at(40, 2))];
  expect(alikeAlong(alone)).toEqual([[], [50], []]);
  // Together: 40 h later at two of three sensors, within 6 h, each by 1.2 of 2; the third's 1.19 does not do.
  const together = [of(at(20, 2), at(60, 1.2)), of(at(30, 2), at(75, 1.2)), of(at(40, 2), at(80, 1.19))];
  expect(alikeAlong(together)).toEqual([[60], [75], []]);
  expect(alikeAlong([of(at(20, 2), at(60, 1.2)), of(at(30, 2), at(77, 1.2)), of(at(40, 2))])).toEqual([[], [], []]);
});
