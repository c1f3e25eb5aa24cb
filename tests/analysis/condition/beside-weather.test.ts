import { describe, expect, it } from 'vitest';
import { roofHours } from '../../../src/analysis/condition/roof-hours.ts';
import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import { FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';
import { DAY, HOUR, kept, START } from './kept-bin.ts';

describe('grain beside the weather', () => {
  it('counts the days from 20 °F on above the outdoor air of the month before', () => {
    // Outdoors 0 °C throughout; grain at 20 °C for 30 days, then 5 °C: 30 days are 36 °F above, the others 9 °F.
    const { outdoors, alerts } = kept({ days: 60, tempC: (_, day) => (day < 30 ? 20 : 5), outdoorC: () => 0 });
    expect(outdoors.days.value).toBe(30);
    expect(outdoors.mostK.value).toBeCloseTo(20, 6);
    expect(alerts.map(({ kind }) => kind)).toEqual(['warmer than outdoors']);
    const cool = kept({ days: 60, tempC: () => 5, outdoorC: () => 0 });
    expect(cool.outdoors.days).toMatchObject({ value: 0, interval: [0, 0] });
    expect(cool.alerts).toEqual([]);
  });

  it('is withheld without weather', () => {
    const { outdoors } = kept({ days: 60, tempC: () => 20, weather: false });
    expect(outdoors.days.value).toBeNull();
    expect(outdoors.mostK.why).toContain('outdoor');
  });

  it('counts days warm enough for insects by the share of the grain', () => {
    // The top third (5 of 1, 3, 5 m) at 28 °C, the rest at 10 °C, for 30 days: 10 days of all grain, within the best range too.
    const { insects } = kept({ days: 30, tempC: (heightM) => (heightM === 5 ? 28 : 10) });
    expect(insects.develop.value).toBeCloseTo(10, 6);
    expect(insects.best.value).toBeCloseTo(10, 6);
    // Fields 1992: 40 °C is above the range in which they complete their development.
    expect(kept({ days: 30, tempC: () => 40 }).insects.develop.value).toBe(0);
  });

  it('tells the coldest week and what came after', () => {
    const { coldest, coldestMs, warmedSinceK } = kept({
      days: 60,
      tempC: (_, day) => (day < 20 ? 10 : day < 40 ? 0 : 4),
    });
    expect(coldest.value).toBeCloseTo(0, 6);
    expect(coldestMs).toBe(Date.UTC(2024, 9, 21));
    expect(warmedSinceK.value).toBeCloseTo(4, 6);
  });
});

describe('fan hours that could wet the roof', () => {
  const spans = () => {
    const list = spanList();
    pushSpan(list, START, START + 2 * DAY, FAN_ON, 5000);
    return toFanSpans(list);
  };
  // Saturated air of 10 °C holds 0.007661 kg/kg at 101,325 Pa (ASHRAE Fundamentals, ch. 1, table 2, from memory): its dew point.
  const leaving = () => ({ ratio: 0.007661, wetter: 0.0081, warmer: 0.0078, others: [] });
  const at = (steelC: (hour: number) => number, more: Partial<Parameters<typeof roofHours>[0]> = {}) => {
    const timeMs = Float64Array.from({ length: 49 }, (_, h) => START + h * HOUR);
    return roofHours({
      spans: spans(),
      fromMs: START,
      toMs: START + 2 * DAY,
      air: 'up',
      outdoor: { timeMs, tempC: Float64Array.from({ length: 49 }, (_, h) => steelC(h)) },
      stationPa: 101_325,
      leaving,
      ...more,
    });
  };

  it('begin where the roof is colder than the leaving air’s dew point', () => {
    expect(at(() => 9)).toMatchObject({ value: 48 });
    expect(at(() => 11).value).toBe(0);
    expect(at((hour) => (hour < 24 ? 8 : 12)).value).toBeCloseTo(24, 0);
  });
  it('reach up to steel under a clear night sky, down to drier grain', () => {
    // 12 °C less 3 K lies under the dew point of the half point wetter grain; 9.9 °C over that of the half point drier.
    expect(at(() => 12).interval).toEqual([0, 48]);
    expect(at(() => 9.9).interval).toEqual([0, 48]);
  });
  it('stay open where air or weather is not known, and are withheld where that is most', () => {
    const half = at(() => 9, { leaving: (ms) => (ms < START + 1.5 * DAY ? leaving() : null) });
    expect(half).toMatchObject({ value: 36 });
    expect(half.interval?.[1]).toBe(48);
    expect(at(() => 9, { leaving: () => null }).value).toBeNull();
    expect(at(() => 9, { air: 'down' }).why).toContain('drawn down');
    expect(at(() => 9, { spans: null }).value).toBeNull();
    // A log of another time, or one that is unknown throughout, tells nothing: no 0 hours then.
    expect(at(() => 9, { fromMs: START + 20 * DAY, toMs: START + 30 * DAY })).toMatchObject({
      value: null,
      interval: null,
    });
    const unknown = spanList();
    pushSpan(unknown, START, START + 2 * DAY, FAN_UNKNOWN, Number.NaN);
    expect(at(() => 9, { spans: toFanSpans(unknown) }).why).toContain('nothing of the storage');
  });
});
