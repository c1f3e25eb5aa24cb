import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { binProbes } from '../../../src/analysis/probes/bin-probes.ts';
import { correctedForSensor } from '../../../src/analysis/probes/corrected-for-sensor.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { toArrow } from '../../../src/tables/arrow.ts';
import { HOUR, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from '../moisture/make-bin.ts';

const CENTRE = makeCable('C', 0, 1, 3, 5);
const RING = [makeCable('R1', 3, 1, 3, 5), makeCable('R2', 3, 1, 3, 5)];
/** Truly 18 % before the fan and 15 % after; all cables read 0.6 point too dry, and the passing air while the fan runs. */
const series = [CENTRE, ...RING].flatMap((cable) =>
  [1, 2, 3].map((sensor) =>
    makeSeries(
      cable,
      sensor,
      0,
      320,
      (hour) => (hour < 48 ? 0.174 : hour < 250 ? 0.11 : 0.144),
      () => 12,
    ),
  ),
);
const INPUT = {
  bin: makeBin([CENTRE, ...RING]),
  season: makeSeason({
    prices: {
      corn: { pricePerBushel: 4, baseMoistureWb: 0.15, shrinkPerPoint: null, discountPerBushelPoint: null },
    },
  }),
  series,
  spans: makeSpans([48, FAN_OFF], [200, FAN_ON], [72, FAN_OFF]),
  fanHours: { value: 200, interval: null, why: null },
  tickets: [],
};
const MOISTURE = binMoisture(INPUT);

interface Sample {
  hour: number;
  height: number;
  out: number;
  wb: number;
  temp?: number;
  flag?: number;
}

function probesOf(samples: readonly Sample[], input = INPUT, moisture = MOISTURE) {
  const of = (pick: (one: Sample) => number) => Float64Array.from(samples, pick);
  const table = toArrow('probes', {
    time: of((one) => T0 + one.hour * HOUR),
    bin: { codes: new Int32Array(samples.length), values: ['B1'] },
    height_m: of((one) => one.height),
    from_centre_m: of((one) => one.out),
    moisture_wb: of((one) => one.wb),
    temp_c: of((one) => one.temp ?? 12),
    flags: Uint8Array.from(samples, (one) => one.flag ?? 0),
    file: { codes: new Int32Array(samples.length), values: ['probes.csv'] },
  });
  return binProbes(table, input, moisture);
}

const GOOD: Sample[] = [
  { hour: 20, height: 1, out: 0, wb: 0.18 },
  { hour: 20, height: 3, out: 2.8, wb: 0.18 },
  { hour: 20, height: 5, out: 3.3, wb: 0.18 },
  { hour: 280, height: 2, out: 3, wb: 0.15 },
];

describe('binProbes', () => {
  it('of cables with thermometers alone says that these tell no moisture, not that none was read near', () => {
    const input = {
      ...INPUT,
      series: series.map((one) => ({ ...one, moistureWb: one.moistureWb.map(() => Number.NaN) })),
    };
    const moisture = binMoisture(input);
    expect(moisture.end.value).toBeNull();
    expect(moisture.why).toBe(`The cables of ${INPUT.bin.name} log no moisture.`);
    const told = probesOf(GOOD, input, moisture);
    expect(told.unmatched).toEqual([{ count: 4, why: 'no cable of the bin tells a moisture that can be believed' }]);
    // One that logged moistures of which none can be believed is told as such.
    const flagged = {
      ...INPUT,
      series: series.map((one) => ({ ...one, moistureFlags: one.moistureFlags.map(() => 1) })),
    };
    expect(binMoisture(flagged).why).toMatch(/^No sensor in the grain of .* gave a believable moisture/);
  });
  it('finds the offset of the cables and tells the season’s numbers without it', () => {
    const { bin, rings, days, corrected, why, unmatched } = probesOf(GOOD);
    expect(why).toBeNull();
    expect(unmatched).toEqual([]);
    expect(bin.pairs).toBe(4);
    expect(bin.offset.value).toBeCloseTo(-0.6, 9);
    // The meter's limit alone, 0.5 * 1.645 / 1.96 = 0.42, is in the interval.
    expect(bin.offset.interval![1] - bin.offset.value!).toBeGreaterThan(0.42);
    expect(rings.map((one) => one.cables)).toEqual([['C'], ['R1', 'R2']]);
    expect(days.map((one) => one.pairs)).toEqual([3, 1]);
    expect(corrected!.end.value).toBeCloseTo(0.15, 9);
    // The same sensors at both ends: a shared offset leaves the points as they are.
    expect(corrected!.pointsRemoved).toEqual(MOISTURE.pointsRemoved);
    // At 15 % nothing is over-dried; as read, at 14.4 %, there was.
    expect(MOISTURE.overdryingLossBushels.value).toBeGreaterThan(0);
    expect(corrected!.overdryingLossBushels.value).toBeCloseTo(0, 6);
    expect(corrected!.overdryingLoss.value).toBeCloseTo(0, 6);
  });

  it('takes the offset off the end alone where the start is stated', () => {
    const late = series.map((one) => ({
      ...one,
      moistureFlags: Uint8Array.from(one.timeMs, (ms) => (ms < T0 + 250 * HOUR ? 1 : 0)),
    }));
    const input = { ...INPUT, series: late, bin: makeBin([CENTRE, ...RING], { moistureInWb: 0.18 }) };
    const moisture = binMoisture(input);
    expect(moisture.start.from).toBe('stated');
    expect(moisture.pointsRemoved.value).toBeCloseTo(3.6, 9);
    const { corrected } = probesOf([{ hour: 280, height: 2, out: 3, wb: 0.15 }], input, moisture);
    expect(corrected!.pointsRemoved.value).toBeCloseTo(3, 9);
  });

  it('does not count what cables say of the passing air', () => {
    const { bin, pairs, corrected, why } = probesOf([{ hour: 150, height: 3, out: 3, wb: 0.165 }]);
    expect(pairs.map((one) => one.air)).toEqual(['moving']);
    expect(bin.offset.value).toBeNull();
    expect(why).toContain('while the fan ran');
    expect(corrected).toBeNull();
  });

  it('says why a sample is held against no sensor', () => {
    const { unmatched, bin } = probesOf([
      { hour: 20, height: Number.NaN, out: 3, wb: 0.18 },
      { hour: 20, height: 3, out: 4.9, wb: 0.18 },
      { hour: 2000, height: 3, out: 3, wb: 0.18 },
    ]);
    expect(unmatched.map((one) => one.count)).toEqual([1, 1, 1]);
    expect(unmatched.map((one) => one.why).join()).toMatch(/no height.*from the centre.*around their day/);
    expect(bin.offset.value).toBeNull();
  });

  it('knows no bearing: cables of one ring that differ make the sample less sure', () => {
    const uneven = series.map((one) =>
      one.cable === 'R2' ? { ...one, moistureWb: one.moistureWb.map((wb) => wb + 0.02) } : one,
    );
    const [even] = probesOf([GOOD[1]]).pairs;
    const [apart] = probesOf([GOOD[1]], { ...INPUT, series: uneven }).pairs;
    // 17.4 and 19.4 %: mean 18.4, their standard deviation sqrt 2 points.
    expect(apart.offset).toBeCloseTo(0.4, 9);
    expect(apart.sd ** 2 - even.sd ** 2).toBeCloseTo(2, 6);
  });

  describe('one sensor that is off beside good ones', () => {
    // The middle one at the centre reads 1.5 points too wet beside the others: 0.9 too wet where they are 0.6 too dry.
    const off = series.map((one) =>
      one.cable === 'C' && one.sensor === 2 ? { ...one, moistureWb: one.moistureWb.map((wb) => wb + 0.015) } : one,
    );
    const at = (hour: number, wb: number) => [1, 3, 5].map((height) => ({ hour, height, out: 0, wb }));
    const found = probesOf([...at(20, 0.18), ...at(280, 0.15), ...at(290, 0.15)], { ...INPUT, series: off });

    it('has its own offset, and by how much it is off beside them', () => {
      expect(found.sensors.map(({ cable, sensor, pairs }) => [cable, sensor, pairs])).toEqual([
        ['C', 1, 3],
        ['C', 2, 3],
        ['C', 3, 3],
      ]);
      const [below, middle, above] = found.sensors;
      expect(middle.offset.value).toBeCloseTo(0.9, 9);
      expect(below.offset.value).toBeCloseTo(-0.6, 9);
      expect(above.offset.value).toBeCloseTo(-0.6, 9);
      // The meter's 0.42 stands in each whole; beside the others it cancels.
      expect(middle.offset.interval![1] - 0.9).toBeGreaterThan(0.42);
      expect(middle.beyondOthers!.value).toBeCloseTo(1.5, 9);
      expect(middle.beyondOthers!.interval![0]).toBeGreaterThan(0.3);
      expect([below.beyondOthers, above.beyondOthers]).toEqual([null, null]);
    });

    it('says what the season’s numbers would be with it corrected, by its share of the grain', () => {
      const off2 = { ...INPUT, series: off };
      const moisture = binMoisture(off2);
      const own = moisture.shares.find((one) => one.cable === 'C' && one.sensor === 2)!;
      const { sensors } = probesOf([...at(20, 0.18), ...at(280, 0.15), ...at(290, 0.15)], off2, moisture);
      const middle = sensors.find((one) => one.sensor === 2)!;
      // It reads 0.9 point too wet for `share` of the grain.
      expect(middle.corrected.end.value).toBeCloseTo(moisture.end.value! - (0.9 / 100) * own.share, 9);
      const [low, high] = middle.corrected.end.interval!;
      expect(high - low).toBeGreaterThanOrEqual(moisture.end.interval![1] - moisture.end.interval![0]);
      // The same sensors tell the start: the points stay.
      expect(middle.corrected.pointsRemoved).toEqual(moisture.pointsRemoved);
      // A start as stated: what it reads too wet at the end, the points lack by its share.
      const stated = { ...moisture, start: { ...moisture.start, from: 'stated' as const } };
      const alone = correctedForSensor(stated, 'C', 2, middle.offset);
      expect(alone.pointsRemoved.value).toBeCloseTo(moisture.pointsRemoved.value! + 0.9 * own.share, 9);
      expect(correctedForSensor(moisture, 'C', 9, middle.offset).end.why).toContain('does not tell');
    });

    it('is told though its samples lie far from all others and do not count for the bin', () => {
      const far = found.pairs.filter((one) => one.far);
      expect(far.every((one) => one.sensors.join() === 'C 2')).toBe(true);
      expect(far.length).toBeGreaterThan(0);
    });

    it('is no sensor’s own where the sample lies between two, nor where nobody knows the cable: then it is wide', () => {
      expect(probesOf([{ hour: 20, height: 2, out: 0, wb: 0.18 }]).sensors).toEqual([]);
      const apart = series.map((one) =>
        one.cable === 'R2' ? { ...one, moistureWb: one.moistureWb.map((wb) => wb + 0.02) } : one,
      );
      const [r1, r2] = probesOf([GOOD[1], { ...GOOD[1], hour: 21 }], { ...INPUT, series: apart }).sensors;
      expect([r1.offset.value, r2.offset.value]).toEqual([expect.closeTo(-0.6, 9), expect.closeTo(1.4, 9)]);
      // Cables 2 points apart: an sd of sqrt 2 points that a second sample does not lessen, 2.33 at 90 %.
      for (const { offset } of [r1, r2]) expect(offset.interval![1] - offset.value!).toBeGreaterThan(2.33);
      expect([r1.beyondOthers, r2.beyondOthers]).toEqual([null, null]);
    });
  });

  it('without a fan log says that nobody knows what the air did', () => {
    const { why, notes, pairs } = probesOf(GOOD, { ...INPUT, spans: makeSpans() });
    expect(pairs.every((one) => one.air === 'unknown')).toBe(true);
    expect(why).toContain('no fan log tells whether the air stood still');
    expect(`${why} ${notes.join(' ')}`).not.toMatch(/while the fan ran/);
  });

  it('leaves flagged samples out and tells how cold ones were taken', () => {
    const cold = GOOD.map((one) => ({ ...one, temp: 1 }));
    const { pairs, notes, meterLimit } = probesOf([...cold, { ...GOOD[0], flag: 2 }]);
    expect(pairs).toHaveLength(4);
    expect(pairs.every((one) => one.cold)).toBe(true);
    expect(meterLimit).toBe(1);
    expect(notes.join(' ')).toMatch(/1 hand sample.*left out/);
    expect(notes.join(' ')).toContain('too few warm ones');
  });

  it('takes a date alone for any hour of its day', () => {
    // 2 October 2024, 00:00 in Chicago is 05:00 UTC: readings from hour 29 on, the day after filling.
    const { pairs } = probesOf([{ hour: 29, height: 3, out: 3, wb: 0.18 }]);
    expect(pairs[0].air).toBe('still');
    expect(pairs[0].cableWb).toBeCloseTo(0.174, 9);
  });

  it('has nothing to say without samples', () => {
    const none = probesOf([]);
    expect(none.why).toContain('No hand samples');
    expect(none.corrected).toBeNull();
  });
});
