import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { DAY, HOUR, makeBin, makeSeries, makeSpans, T0 } from './make-bin.ts';
import { CENTRE, input, LAST, RING, SERIES } from './two-cables.ts';

describe('binMoisture', () => {
  // Rings: circle at 1.5 of radius 5, so the centre has 0.09 and the ring 0.91. Heights: cut at 2.5 of 6.
  // Dry basis at the end: 0.15 -> 0.176471, 0.18 -> 0.219512, 0.14 -> 0.162791, 0.16 -> 0.190476.
  // 0.09 (2.5/6 0.176471 + 3.5/6 0.219512) + 0.91 (2.5/6 0.162791 + 3.5/6 0.190476)
  //   = 0.09 * 0.2015782 + 0.91 * 0.1789406 = 0.1809780; wet: 0.1809780/1.1809780 = 0.1532442
  it('weighs by height and ring and averages as dry basis', () => {
    const told = binMoisture(input());
    expect(told.start.value).toBeCloseTo(0.18, 9);
    expect(told.end.value).toBeCloseTo(0.1532442, 6);
    expect(told.pointsRemoved.value).toBeCloseTo(2.67558, 4);
    expect(told.shares.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 12);
    // points per 100 fan hours: 2.67558 / 2
    expect(told.perHundredFanHours.value).toBeCloseTo(1.33779, 4);
    const [low, high] = told.pointsRemoved.interval!;
    expect(low).toBeLessThan(2.67558);
    expect(high).toBeGreaterThan(2.67558);
    expect(told.why).toBeNull();
  });

  it('gives no points per fan hour for fans that stood still, or whose hours are too unsure', () => {
    const of = (fanHours: { value: number; interval: [number, number]; why: null }) =>
      binMoisture({ ...input(), fanHours }).perHundredFanHours;
    expect(of({ value: 0, interval: [0, 0], why: null })).toMatchObject({
      value: null,
      why: expect.stringMatching(/The fans did not run/),
    });
    expect(of({ value: 0, interval: [0, 171], why: null })).toMatchObject({
      value: null,
      why: expect.stringMatching(/too unsure/),
    });
    // Hours that may be more, and not less, bound the rate from below: at 271 h it is 100/271 of that at 100 h.
    const { pointsRemoved } = binMoisture({ ...input(), fanHours: { value: 100, interval: [100, 271], why: null } });
    const rate = of({ value: 100, interval: [100, 271], why: null });
    expect(rate.value).toBeCloseTo(Number(pointsRemoved.value), 9);
    expect(rate.interval?.[0]).toBeLessThanOrEqual((Number(pointsRemoved.value) * 100) / 271 + 1e-9);
    expect(rate.interval?.[0]).toBeGreaterThan(0);
  });

  // Each cable by its own heights: C 0.18 -> wet of 0.2015782 = 0.1677612; R wet of 0.1789406 = 0.1517808.
  it("tells each cable's own points", () => {
    const told = binMoisture(input());
    expect(told.cables.map((one) => one.cable)).toEqual(['C', 'R']);
    expect(told.cables[0].points).toBeCloseTo(1.22388, 4);
    expect(told.cables[0].weight).toBeCloseTo(0.09, 12);
    expect(told.cables[1].points).toBeCloseTo(2.82192, 4);
  });

  it('takes still-air readings: the leaning ones, on all the while, do not count', () => {
    const told = binMoisture(input());
    expect(told.start.stillAir && told.end.stillAir).toBe(true);
    expect(told.start.window!.fromMs).toBe(T0);
    // The start's first day is all still air; the end's last day too.
    expect(told.start.fanOn).toBeNull();
    expect(told.errorParts.map((part) => part.cause)).not.toContain('readings while the fan ran');
  });

  it('does not wait for still air when the fan ran from the first hour on', () => {
    const told = binMoisture(input({ spans: makeSpans([248, FAN_ON], [72, FAN_OFF]) }));
    expect(told.start.stillAir).toBe(false);
    expect(told.start.window!.fromMs).toBe(T0);
    expect(told.start.fanOn).toBeCloseTo(0.18, 9);
    expect(told.end.stillAir).toBe(true);
    expect(told.errorParts.map((part) => part.cause)).toContain('readings while the fan ran');
    const wide = told.pointsRemoved.interval!;
    const narrow = binMoisture(input()).pointsRemoved.interval!;
    expect(wide[1] - wide[0]).toBeGreaterThan(narrow[1] - narrow[0]);
    expect(told.notes.join(' ')).toContain('no still-air readings lie near enough');
  });

  it('waits for still air when only few fan hours lie before it', () => {
    const told = binMoisture(input({ spans: makeSpans([10, FAN_ON], [38, FAN_OFF], [200, FAN_ON], [72, FAN_OFF]) }));
    expect(told.start.stillAir).toBe(true);
    expect(told.start.window!.fromMs).toBe(T0 + 12 * HOUR);
    expect(told.errorParts.map((part) => part.cause)).toContain('fan hours before the first day and after the last');
  });

  it('leaves a sensor out of both moments when it lacks one', () => {
    const dead = { ...SERIES[3], moistureFlags: SERIES[3].moistureFlags.map((_, i) => (i > 100 ? 1 : 0)) };
    const told = binMoisture(input({ series: [...SERIES.slice(0, 3), dead] }));
    expect(told.shares.map((one) => `${one.cable}${one.sensor}`)).toEqual(['C1', 'C2', 'R1']);
    expect(told.notes.join(' ')).toContain(
      '1 of 4 sensors is left out, for want of believable readings on the days compared; its neighbours stand for its grain',
    );
    // R1 stands for its whole cable: 0.09 * 0.2015782 + 0.91 * 0.162791 = 0.1662818; wet 0.1425743
    expect(told.end.value).toBeCloseTo(0.1425743, 6);
  });

  it('withholds the points when what is left stands for less than a third of the grain', () => {
    const told = binMoisture(input({ series: SERIES.slice(0, 2) }));
    expect(told.pointsRemoved.value).toBeNull();
    expect(told.why).toContain('only 9 % of the grain');
    expect(told.start.value).toBeNull();
  });

  it('a fixed error of each sensor changes nothing in the points', () => {
    const shift = [0.004, -0.006, 0.003, 0.005];
    const off: SensorSeries[] = SERIES.map((one, i) => ({
      ...one,
      moistureWb: one.moistureWb.map((m) => m + shift[i]),
    }));
    const told = binMoisture(input({ series: off })).pointsRemoved.value!;
    // Not to the last digit: shares hold for dry basis, points for wet basis.
    expect(Math.abs(told - 2.67558)).toBeLessThan(0.05);
  });

  it('withholds the start when the fans ran long before the first reading', () => {
    const late = SERIES.map((one) => makeSeries(one.cable === 'C' ? CENTRE : RING, one.sensor, 150, LAST, () => 0.15));
    const told = binMoisture(input({ series: late }));
    expect(told.pointsRemoved.value).toBeNull();
    expect(told.why).toContain('102 fan hours after filling');
  });

  it('says so when the log begins weeks after filling but nobody knows of fan hours', () => {
    const bin = makeBin([CENTRE, RING], { filledMs: T0 - 20 * DAY });
    const told = binMoisture(input({ bin, spans: null }));
    expect(told.pointsRemoved.value).toBeCloseTo(2.67558, 4);
    expect(told.start.stillAir).toBe(false);
    expect(told.notes.join(' ')).toContain('begin 20 days after filling; what was removed before is not seen');
  });

  it('ends before unloading', () => {
    const bin = makeBin([CENTRE, RING], { unloadedMs: T0 + 300 * HOUR });
    expect(binMoisture(input({ bin })).end.window!.toMs).toBe(T0 + 299 * HOUR + 1);
  });

  it('does not take still air from before a hole in the fan log', () => {
    const told = binMoisture(
      input({ spans: makeSpans([48, FAN_OFF], [100, FAN_ON], [60, FAN_OFF], [112, FAN_UNKNOWN]) }),
    );
    expect(told.end.stillAir).toBe(false);
    expect(told.end.window!.toMs).toBe(T0 + 319 * HOUR + 1);
  });

  // Water over weight: (30 t 0.20 + 10 t 0.16)/40 t = 0.19
  it('falls back on tickets, weighted by weight, with a wide interval and its reason', () => {
    const tickets = [
      { timeMs: T0, direction: 'in' as const, netKg: 30_000, moistureWb: 0.2 },
      { timeMs: T0, direction: 'in' as const, netKg: 10_000, moistureWb: 0.16 },
    ];
    const bin = makeBin([CENTRE, RING], { moistureOutWb: 0.15 });
    const told = binMoisture(input({ bin, series: [], tickets }));
    expect(told.start.value).toBeCloseTo(0.19, 12);
    expect(told.start.from).toBe('tickets');
    expect(told.end.from).toBe('stated');
    expect(told.pointsRemoved.value).toBeCloseTo(4, 9);
    expect(told.notes.join(' ')).toContain('different instruments');
    const own = binMoisture(input()).pointsRemoved.interval!;
    const [low, high] = told.pointsRemoved.interval!;
    expect(high - low).toBeGreaterThan(own[1] - own[0]);
  });

  describe('a start in moving air, with tickets that cover the filling', () => {
    // 14 loads of 24,720 kg fill the bin of 339,292 kg by test weight (2 % packed).
    const loads = (stepMs: number) =>
      Array.from({ length: 14 }, (_, i) => ({
        timeMs: T0 - i * stepMs,
        direction: 'in' as const,
        netKg: 24_720,
        moistureWb: 0.18,
      }));
    // On from the filling on; in moving air two points low, as three stops show.
    const spans = makeSpans([100, FAN_ON], [24, FAN_OFF], [50, FAN_ON], [24, FAN_OFF], [50, FAN_ON], [72, FAN_OFF]);
    const off = (hour: number) => [100, 174, 248].some((stop, i) => hour >= stop && hour < [124, 198, 400][i]);
    const series = [CENTRE, RING].flatMap((cable) =>
      [1, 2].map((n) => makeSeries(cable, n, 0, LAST, (hour) => (off(hour) ? 0.15 : 0.13))),
    );

    it('starts from the tickets, which are surer, and says so', () => {
      const told = binMoisture(input({ series, spans, tickets: loads(HOUR / 2) }));
      expect(told.start.from).toBe('tickets');
      expect(told.pointsRemoved.value).toBeCloseTo(3, 9);
      expect(told.notes.join(' ')).toContain('surer than the sensors, read in moving air only');
      expect(told.errorParts.map((part) => part.cause)).toContain('moisture meter of the tickets, at the start');
      const without = binMoisture(input({ series, spans })).pointsRemoved.interval!;
      const [low, high] = told.pointsRemoved.interval!;
      expect(high - low).toBeLessThan(without[1] - without[0]);
    });

    it('does not where the air stood still, the filling took long, or loads are missing', () => {
      expect(binMoisture(input({ tickets: loads(HOUR / 2) })).start.from).toBe('sensors');
      expect(binMoisture(input({ series, spans, tickets: loads(12 * HOUR) })).start.from).toBe('sensors');
      expect(binMoisture(input({ series, spans, tickets: loads(HOUR / 2).slice(4) })).start.from).toBe('sensors');
    });
  });

  it('has nothing to tell of a bin without readings, and says why', () => {
    const told = binMoisture(input({ series: [] }));
    expect(told.pointsRemoved).toMatchObject({ value: null, interval: null });
    expect(told.why).toContain('No sensor in the grain of North');
    expect(told.daily).toEqual([]);
  });

  it('tells the days by the local calendar', () => {
    const { daily } = binMoisture(input());
    // T0 is 19:00 on 30 September in Chicago (UTC-5): the first local day began at 05:00 UTC that day.
    expect(daily[0].dayMs).toBe(T0 - 19 * HOUR);
    expect(daily[0].mean).toBeCloseTo(0.18, 9);
    expect(daily[0].stillAir).toBe(true);
    // Day 5 lies within the run: its mean leans to what the sensors read while it runs.
    expect(daily[5].mean).toBeCloseTo(0.12, 9);
    expect(daily[5].stillAir).toBe(false);
    expect(daily.at(-1)!.mean).toBeCloseTo(0.1532442, 6);
    expect(daily.at(-1)!.fanHours).toBeCloseTo(200, 9);
  });
});
