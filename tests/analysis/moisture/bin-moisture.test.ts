import { describe, expect, it } from 'vitest';
import { binMoisture, binMoistures } from '../../../src/analysis/moisture/bin-moisture.ts';
import { binTemperature } from '../../../src/analysis/moisture/bin-temperature.ts';
import type { BinMoistureInput } from '../../../src/analysis/moisture/observed-moisture.ts';
import { overdryingLoss } from '../../../src/analysis/moisture/overdrying-loss.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { DAY, HOUR, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from './make-bin.ts';

const CENTRE = makeCable('C', 0, 1, 4);
const RING = makeCable('R', 3, 1, 4);
const BIN = makeBin([CENTRE, RING]);
/** Off for 48 hours, on for 200, off for 72. */
const SPANS = makeSpans([48, FAN_OFF], [200, FAN_ON], [72, FAN_OFF]);
const LAST = 320;

/** Before the fan, while it runs, from two hours after it stopped on. */
const steps = (before: number, running: number, after: number) => (hour: number) =>
  hour < 48 ? before : hour < 250 ? running : after;

const SERIES = [
  makeSeries(CENTRE, 1, 0, LAST, steps(0.18, 0.12, 0.15)),
  makeSeries(CENTRE, 2, 0, LAST, steps(0.18, 0.12, 0.18)),
  makeSeries(RING, 1, 0, LAST, steps(0.18, 0.12, 0.14)),
  makeSeries(RING, 2, 0, LAST, steps(0.18, 0.12, 0.16)),
];

function input(rest: Partial<BinMoistureInput> = {}): BinMoistureInput {
  return {
    bin: BIN,
    season: makeSeason(),
    series: SERIES,
    spans: SPANS,
    fanHours: { value: 200, interval: null, why: null },
    tickets: [],
    ...rest,
  };
}

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
    expect(told.notes.join(' ')).toContain('1 of 4 sensors are left out');
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

describe('one cable', () => {
  const one = makeBin([RING]);
  it('gets an interval and the note that it cannot know the rest', () => {
    const told = binMoisture(input({ bin: one }));
    expect(told.pointsRemoved.interval).not.toBeNull();
    expect(told.notes.join(' ')).toContain('One cable cannot tell');
    const two = binMoisture(input()).pointsRemoved.interval!;
    const [low, high] = told.pointsRemoved.interval!;
    expect(high - low).toBeGreaterThan(two[1] - two[0]);
    expect(high - low).toBeLessThan(6);
  });

  it('borrows the spread of the other bins', () => {
    const wild = [0, 1, 2, 3].map((c) => makeCable(`W${c}`, 3, 1, 4));
    const removed = [0.01, 0.05, 0.02, 0.04];
    const other = makeBin(wild);
    const series = wild.flatMap((cable, c) =>
      [1, 2].map((sensor) => makeSeries(cable, sensor, 0, LAST, steps(0.2, 0.15, 0.2 - removed[c]))),
    );
    const alone = binMoisture(input({ bin: one })).pointsRemoved.interval!;
    const [told] = binMoistures([input({ bin: one }), input({ bin: other, series })]);
    const [low, high] = told.pointsRemoved.interval!;
    expect(high - low).toBeGreaterThan(alone[1] - alone[0]);
    expect(told.notes.join(' ')).toContain("that of the season's other bins");
  });
});

describe('over-drying loss', () => {
  const priced = (baseMoistureWb: number | null) =>
    makeSeason({
      prices: { corn: { pricePerBushel: 4, baseMoistureWb, shrinkPerPoint: null, discountPerBushelPoint: null } },
    });

  // Volume pi/4 100 * 6 = 471.2389 m3, 720 kg/m3: 339292.0 kg, dry matter 0.82 of it = 278219.4 kg.
  // At 15.5 %: 329253.8 kg; at 15.32442 %: 328571.1 kg; 682.7 kg lost, 26.88 bushels of 25.40117 kg, 107.5 at 4.
  it('by hand', () => {
    const told = binMoisture(input({ season: priced(0.155) }));
    expect(told.overdryingLossBushels.value).toBeCloseTo(26.88, 1);
    expect(told.overdryingLoss.value).toBeCloseTo(107.5, 0);
    const [low, high] = told.overdryingLossBushels.interval!;
    expect(low).toBe(0); // a shared bias of the cables does not cancel here
    expect(high).toBeGreaterThan(26.88);
  });

  // The weight that the dry matter would have at the base, less that at the end, in the crop's own legal bushels. Dry matter
  // 100 t in each, ended at 12 %: 113,636.4 kg. Soybeans, base 13 %: 114,942.5 kg, 1,306.2 kg, 47.99 bushels of 60 lb (27.21554 kg),
  // 508.7 at 10.60. Wheat, base 13.5 %: 115,606.9 kg, 1,970.6 kg, 72.41 bushels, 405.5 at 5.60. Barley, base 14.5 %: 116,959.1 kg,
  // 3,322.7 kg, 152.61 bushels of 48 lb (21.77243 kg), 686.7 at 4.50.
  it.each([
    ['soybean', 0.13, 10.6, 47.99, 508.7],
    ['wheat', 0.135, 5.6, 72.41, 405.5],
    ['barley', 0.145, 4.5, 152.61, 686.7],
  ])('%s by hand, whatever the fans were run for', (crop, base, price, bushels, money) => {
    const season = makeSeason({
      prices: {
        [crop]: { pricePerBushel: price, baseMoistureWb: base, shrinkPerPoint: null, discountPerBushelPoint: null },
      },
    });
    const grain = { dryMatterKg: 100_000, dryMatterKgInterval: [99_000, 101_000] as [number, number], why: null };
    const mean = { value: 0.12, window: null, stillAir: true, readings: 1, sensors: 1, fanOn: null };
    for (const goal of ['dry', 'cool', 'condition', 'hold'] as const) {
      const told = overdryingLoss(makeBin([], { crop }, { goal }), season, grain, { mean, parts: [], why: null });
      expect(Math.abs(told.bushels.value! - bushels)).toBeLessThan(0.005);
      expect(Math.abs(told.money.value! - money)).toBeLessThan(0.05);
      // The end is taken as exact here: one percent of dry matter is one percent of the loss.
      expect(told.bushels.interval![1] / told.bushels.value!).toBeCloseTo(1.01, 9);
    }
  });

  it('takes the target where the price states no base, and the dry matter of the tickets where they cover the filling', () => {
    const bin = makeBin([CENTRE, RING], { targetMoistureWb: 0.16 });
    // 346,080 kg over the scale at 19 %: 280,324.8 kg dry; at 16 % 333,720.0, at 15.32442 % 331,057.6: 2,662.4 kg, 104.81 bushels.
    const tickets = Array.from({ length: 14 }, (_, i) => ({
      timeMs: T0 - i * HOUR,
      direction: 'in' as const,
      netKg: 24_720,
      moistureWb: 0.19,
    }));
    const told = binMoisture(input({ bin, season: priced(null), tickets }));
    expect(told.overdryingLossBushels.value).toBeCloseTo(104.81, 1);
    expect(told.overdryingLoss.value).toBeCloseTo(4 * 104.81, 0);
  });

  it('is none where the grain ended wetter', () => {
    const told = binMoisture(input({ season: priced(0.13) }));
    expect(told.overdryingLossBushels.value).toBe(0);
    expect(told.overdryingLossBushels.interval).toEqual([0, 0]);
  });

  it('needs a base or target, and a price for the money', () => {
    const bin = makeBin([CENTRE, RING], { targetMoistureWb: null });
    expect(binMoisture(input({ bin })).overdryingLoss.why).toContain('Neither a base moisture');
    const told = binMoisture(input());
    expect(told.overdryingLossBushels.value).toBe(0);
    expect(told.overdryingLoss.why).toContain('No price of corn');
  });
});

describe('binTemperature', () => {
  // 0.09 * (2.5/6 4 + 3.5/6 8) + 0.91 * (2.5/6 5 + 3.5/6 10) = 0.09 * 6.33333 + 0.91 * 7.91667 = 7.774167
  it('weighs as moisture does', () => {
    const ends = [4, 8, 5, 10];
    const series = SERIES.map((one, i) => ({
      ...one,
      moistureWb: one.moistureWb.map(() => Number.NaN),
      tempC: one.tempC.map((_, hour) => (hour < 100 ? 20 : ends[i])),
    }));
    const told = binTemperature(BIN, series, SPANS);
    expect(told.start.value).toBeCloseTo(20, 9);
    expect(told.end.value).toBeCloseTo(7.774167, 5);
    expect(told.why).toBeNull();
  });

  it('is withheld when the log begins long after filling', () => {
    const bin = makeBin([CENTRE, RING], { filledMs: T0 - 30 * DAY });
    const told = binTemperature(bin, SERIES, SPANS);
    expect(told.start.value).toBeNull();
    expect(told.why).toContain('30 days');
    expect(told.end.value).toBe(10);
  });
});
