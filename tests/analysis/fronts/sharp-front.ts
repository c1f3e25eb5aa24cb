import { expect } from 'vitest';
import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import type { FrontsInput } from '../../../src/analysis/fronts/fronts-view.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FrontArrival } from '../../../src/analysis/types.ts';
import { HOUR_MS, inventedBin, START_MS, seriesOf } from './invented-bin.ts';

export const HEIGHTS = [1, 2, 3, 4, 5, 6];
/** Sharp front of one hour width moving 0.1 m per fan hour from 24 C to 10 C: half-way at ten fan hours a metre. */
const SPEED_MH = 0.1;

export interface Story {
  /** hours [from, to) of fan on, from START_MS */
  on: [number, number][];
  unknown?: [number, number][];
  aheadC?: number;
  behindC?: number;
  airC?: number;
  everyH?: number;
  hours?: number;
  air?: 'up' | 'down';
  depthM?: number;
  /** changes what a sensor says */
  spoil?: (sensor: number, hour: number, tempC: number) => number;
}

/** Logs of one cable that such a front goes up (or down); what `on` holds within `unknown` runs all the same. */
export function tell(story: Story): FrontsInput {
  const { on, unknown = [], aheadC = 24, behindC = 10, everyH = 1, hours = 240, air = 'up', depthM = 6.5 } = story;
  const airC = story.airC ?? behindC;
  const list = spanList();
  for (let hour = 0; hour < hours; hour++) {
    const inside = (spans: [number, number][]) => spans.some(([from, to]) => hour >= from && hour < to);
    const state = inside(unknown) ? FAN_UNKNOWN : inside(on) ? FAN_ON : FAN_OFF;
    pushSpan(list, START_MS + hour * HOUR_MS, START_MS + (hour + 1) * HOUR_MS, state, state === FAN_ON ? 4000 : 0);
  }
  const fanHoursAt = (hour: number) =>
    on.reduce((sum, [from, to]) => sum + Math.max(0, Math.min(to, hour) - from), 0) * (hour >= 0 ? 1 : 0);
  const sensors = HEIGHTS.map((heightM, index) => {
    const times: number[] = [];
    const temps: number[] = [];
    for (let hour = 0; hour <= hours; hour += everyH) {
      const fromEntry = air === 'up' ? heightM : depthM - heightM;
      const past = Math.min(1, Math.max(0, fanHoursAt(hour) - fromEntry / SPEED_MH + 0.5));
      const tempC = aheadC + past * (behindC - aheadC);
      times.push(START_MS + hour * HOUR_MS);
      temps.push(story.spoil?.(index + 1, hour, tempC) ?? tempC);
    }
    return seriesOf('C1', index + 1, heightM, times, temps);
  });
  const airTimes = Float64Array.from({ length: hours + 1 }, (_, hour) => START_MS + hour * HOUR_MS);
  const log = { timeMs: airTimes, tempC: new Float64Array(hours + 1).fill(airC) };
  const none = { timeMs: new Float64Array(0), tempC: new Float64Array(0) };
  return {
    bin: inventedBin(HEIGHTS, 1, air, depthM),
    sensors,
    fan: toFanSpans(list),
    plenum: air === 'up' ? log : none,
    weather: air === 'up' ? none : log,
  };
}

export function expectHours(arrivals: readonly FrontArrival[], expected: readonly (number | null)[], withinH: number) {
  expect(arrivals).toHaveLength(expected.length);
  expected.forEach((hours, i) => {
    const got = arrivals[i].fanHours;
    if (hours === null) expect(got, `sensor ${i + 1}`).toBeNull();
    else
      expect(Math.abs((got ?? Number.NaN) - hours), `sensor ${i + 1}: ${got}, not ${hours}`).toBeLessThanOrEqual(
        withinH,
      );
  });
}
