import { describe, expect, test } from 'vitest';
import { moistureFronts } from '../../../src/analysis/fronts/moisture-fronts.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { HOUR_MS, inventedBin, START_MS, seriesOf, spansOf } from './invented-bin.ts';

const HEIGHTS = [0.5, 1.5, 2.5, 3.5, 4.5, 5.5];

interface Drying {
  fromWb: number;
  toWb: number;
  /** fan hours a metre of the zone's middle, in each cable */
  paces: readonly number[];
  hours: number;
  onAt: (hour: number) => boolean;
  /** what a reading is off by while the fan runs, and by the hour of the day, fraction */
  leanWb?: number;
  dailyWb?: number;
  air?: 'up' | 'down';
}

// Hand-made: the zone is an S-curve 0.6 m thick whose middle moves one metre in so many fan hours, so a sensor at height h is half-way
// at h times the pace.
function logged(s: Drying) {
  const { air = 'up', leanWb = 0, dailyWb = 0 } = s;
  const bin = inventedBin(HEIGHTS, s.paces.length, air);
  const on = Uint8Array.from({ length: s.hours }, (_, hour) => (s.onAt(hour) ? 1 : 0));
  const fan: number[] = [0];
  on.forEach((state, hour) => {
    fan.push(fan[hour] + state);
  });
  const times = Array.from({ length: Math.floor(s.hours / 4) }, (_, i) => i * 4);
  const series = s.paces.flatMap((pace, c) =>
    HEIGHTS.map((heightM, at): SensorSeries => {
      const wayM = air === 'up' ? heightM : 6.5 - heightM;
      const one = seriesOf(
        `C${c + 1}`,
        at + 1,
        heightM,
        times.map((hour) => START_MS + hour * HOUR_MS),
        times.map(() => 15),
      );
      return {
        ...one,
        moistureWb: Float64Array.from(times, (hour) => {
          const passed = 1 / (1 + Math.exp(-(fan[hour] / pace - wayM) / 0.1));
          const day = dailyWb * Math.cos((2 * Math.PI * hour) / 24);
          return s.fromWb + (s.toWb - s.fromWb) * passed + (on[hour] ? leanWb + day : 0);
        }),
      };
    }),
  );
  return moistureFronts({ bin, series, spans: spansOf(on, 1), number: 4 });
}

const ALWAYS: Drying = { fromWb: 0.19, toWb: 0.13, paces: [100], hours: 520, onAt: () => true };
const off = (found: ReturnType<typeof logged>, pace: number, air: 'up' | 'down' = 'up') =>
  found
    .front!.arrivals.filter((one) => one.fanHours !== null)
    .map((one) => one.fanHours! - pace * (air === 'up' ? one.heightM : 6.5 - one.heightM));

describe('the drying front by moisture sensors', () => {
  test('corn from 19 to 13 %, 100 fan hours a metre: arrivals within a quarter day, the top not reached', () => {
    const { front, why } = logged(ALWAYS);
    expect(why).toBeNull();
    expect(front).toMatchObject({ number: 4, kind: 'drying', fanHours: 520 });
    expect(front!.aheadWb).toBeCloseTo(0.19, 3);
    expect(front!.behindWb).toBeCloseTo(0.13, 3);
    // 520 h bring the middle to 5.2 m: the sensor at 5.5 m has not been passed.
    expect(front!.arrivals.map((one) => one.fanHours !== null)).toEqual([true, true, true, true, true, false]);
    expect(front!.arrivals[5].why).toMatch(/did not get there/);
    for (const hours of off({ front, why }, 100)) expect(Math.abs(hours)).toBeLessThan(6);
    for (const one of front!.arrivals.slice(0, 5)) {
      expect(one.fanHoursInterval![0]).toBeLessThanOrEqual(100 * one.heightM);
      expect(one.fanHoursInterval![1]).toBeGreaterThanOrEqual(100 * one.heightM);
      expect(one.arrivedMs).toBeCloseTo(START_MS + one.fanHours! * HOUR_MS, -3);
    }
  });

  test('fan hours count, not the clock: nights only', () => {
    const found = logged({ ...ALWAYS, hours: 1000, onAt: (hour) => hour % 24 < 10 });
    expect(off(found, 100)).toHaveLength(4);
    for (const hours of off(found, 100)) expect(Math.abs(hours)).toBeLessThan(6);
  });

  test('readings that lean by 0.8 point and swing by the day while the fan runs move no arrival by more than its interval', () => {
    const onAt = (hour: number) => hour % 96 < 72;
    const { front } = logged({ ...ALWAYS, hours: 640, onAt, leanWb: -0.008, dailyWb: 0.006 });
    const told = front!.arrivals.filter((one) => one.fanHours !== null);
    expect(told.length).toBeGreaterThanOrEqual(4);
    for (const one of told) {
      expect(one.fanHoursInterval![0], `${one.heightM}`).toBeLessThanOrEqual(100 * one.heightM + 6);
      expect(one.fanHoursInterval![1], `${one.heightM}`).toBeGreaterThanOrEqual(100 * one.heightM - 6);
    }
  });

  test('air drawn down dries from the top', () => {
    const found = logged({ ...ALWAYS, air: 'down' });
    expect(found.front!.arrivals[5].fanHours).toBeCloseTo(100, -1);
    for (const hours of off(found, 100, 'down')) expect(Math.abs(hours)).toBeLessThan(6);
  });

  test('beans conditioned from 9.5 to 13 % are a wetting front; a cable that gets less air is behind', () => {
    const { front } = logged({ ...ALWAYS, fromWb: 0.095, toWb: 0.13, paces: [80, 120] });
    expect(front!.kind).toBe('wetting');
    const at = (cable: string) => front!.arrivals.find((one) => one.cable === cable && one.sensor === 3)!.fanHours!;
    expect(at('C1')).toBeCloseTo(200, -1);
    expect(at('C2')).toBeCloseTo(300, -1);
  });

  test('a point less tells no front, nor does a bin that dries at all heights together', () => {
    expect(logged({ ...ALWAYS, fromWb: 0.14 })).toMatchObject({
      front: null,
      why: expect.stringMatching(/less than 1.5 points/),
    });
    // 1 h a metre: all heights pass within the first day.
    const stirred = logged({ ...ALWAYS, paces: [1] });
    expect(stirred.front).toBeNull();
    expect(stirred.why).not.toBeNull();
  });

  test('says why without fan hours or without moisture readings', () => {
    expect(logged({ ...ALWAYS, onAt: (hour) => hour < 20 }).why).toMatch(/less than 48 hours/);
    const bin = inventedBin(HEIGHTS);
    const spans = spansOf(new Uint8Array(200).fill(1), 1);
    expect(moistureFronts({ bin, series: [seriesOf('C1', 1, 0.5, [START_MS], [15])], spans, number: 1 }).why).toMatch(
      /No cable of this bin has good moisture readings/,
    );
  });
});
