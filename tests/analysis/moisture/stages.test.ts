import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { depthStages } from '../../../src/analysis/moisture/depth-stages.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { DAY, HOUR, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from './make-bin.ts';

/*
 * Worked by hand. A bin 6 m deep when full, one cable, sensors at 1.5 and 4.5 m, so that each stands for 3 m.
 *  1. day 0: 3 m at 20 %; the fan takes it to 18 %.
 *  2. day 10: 3 m at 22 % on top. Dry basis 0.219512 and 0.282051, mean 0.250782, wet 20.0500 %.
 *     The fan takes the lower to 16 %, the upper to 20 %: 0.190476 and 0.25, mean 0.220238, wet 18.0488 %.
 *  3. day 30: the upper 3 m are taken out; the rest goes from 16 to 15 %.
 * Points of the grain in place: 2.0000, 2.0012, 1.0000. Shares of the full bin: 1/2, 1, 1/2.
 * Points per full bushel: 1 + 2.0012 + 0.5 = 3.5012. What stayed to the end lost, since the bin was full: 3.0012.
 * By mixing the mean rises by 2.0500 at day 10 and falls by 18.0488 - 16 = 2.0488 at day 30; none of it is drying.
 * Water, kg per kg of the full bin's dry matter: in 0.5 (0.25 + 0.282051) = 0.266026; out 0.5 * 0.25 = 0.125; left
 * 0.5 * 0.176471 = 0.088235; so 0.052790 went into the air.
 */
const CABLE = makeCable('C', 2, 1.5, 4.5);
const at = (days: number) => T0 + days * DAY;
const BIN = makeBin([CABLE], {
  depthSteps: [
    { fromMs: at(0), depthM: 3 },
    { fromMs: at(10), depthM: 6 },
    { fromMs: at(30), depthM: 3 },
  ],
  filledMs: at(0),
  unloadedMs: at(60),
});
const SPANS = makeSpans(
  [72, FAN_OFF],
  [100, FAN_ON],
  [68 + 72, FAN_OFF],
  [300, FAN_ON],
  [108 + 72, FAN_OFF],
  [200, FAN_ON],
  [24 * 60 - 992, FAN_OFF],
);
const lower = (hour: number) => (hour < 72 ? 0.2 : hour < 312 ? 0.18 : hour < 792 ? 0.16 : 0.15);
const upper = (hour: number) => (hour < 312 ? 0.22 : 0.2);

/** The upper sensor hangs in the air before day 10 and after day 30. */
function hanging(series: SensorSeries): SensorSeries {
  const moistureFlags = Uint8Array.from(series.timeMs, (ms) => (ms < at(10) || ms >= at(30) ? 4 : 0));
  return { ...series, moistureFlags };
}

const INPUT = {
  bin: BIN,
  season: makeSeason(),
  series: [makeSeries(CABLE, 1, 0, 24 * 60, lower), hanging(makeSeries(CABLE, 2, 0, 24 * 60, upper))],
  spans: SPANS,
  fanHours: { value: 600, interval: null, why: null },
  tickets: [],
};

describe('moistureStages', () => {
  const told = binMoisture(INPUT);
  const stages = told.stages!;

  it('tells each stage of the grain in place', () => {
    expect(stages.stages.map((one) => one.share)).toEqual([0.5, 1, 0.5]);
    expect(stages.stages.map((one) => one.fanHours.value)).toEqual([100, 300, 200]);
    const points = stages.stages.map((one) => one.points.value!);
    expect(points[0]).toBeCloseTo(2, 6);
    expect(points[1]).toBeCloseTo(2.0012, 3);
    expect(points[2]).toBeCloseTo(1, 6);
  });

  it('counts grain that comes or goes as no drying', () => {
    expect(stages.stages[0].mixed).toBeNull();
    expect(stages.stages[1].mixed!.value).toBeCloseTo(-2.05, 3);
    expect(stages.stages[2].mixed!.value).toBeCloseTo(2.0488, 3);
    expect(stages.notes.join(' ')).toContain('2 of 2 changes of depth');
  });

  it('closes the balance of water: in, less out, less what is left', () => {
    const db = (wet: number) => wet / (1 - wet);
    const air = stages.stages.reduce((sum, one) => sum + one.share * (db(one.startWb!) - db(one.endWb!)), 0);
    expect(air).toBeCloseTo(0.266026 - 0.125 - 0.088235, 5);
    expect(stages.perFullBushel.value).toBeCloseTo(3.5012, 3);
    expect(stages.stayed.value).toBeCloseTo(3.0012, 3);
  });

  it('counts in the points removed what the rest lost after the first grain was taken out, by its share', () => {
    expect(told.start.value).toBeCloseTo(0.2005, 6);
    expect(told.end.value).toBeCloseTo(0.180488, 6);
    expect(told.pointsRemoved.value).toBeCloseTo(2.0012 + 0.5, 3);
    expect(told.errorParts.map((part) => part.cause)).toContain(
      'what the rest lost after the first grain was taken out',
    );
    expect(told.notes.join(' ')).toMatch(/200 fan hours ran after the first grain was taken out/);
  });

  it('leaves the points of the whole bin as they are where next to no fan ran later', () => {
    const quiet = makeSpans([72, FAN_OFF], [100, FAN_ON], [140, FAN_OFF], [300, FAN_ON], [828, FAN_OFF]);
    expect(binMoisture({ ...INPUT, spans: quiet }).pointsRemoved.value).toBeCloseTo(2.0012, 3);
  });

  it('says so where the later stage cannot be told', () => {
    const cut = INPUT.series.map((one) => ({
      ...one,
      moistureFlags: Uint8Array.from(one.timeMs, (ms, i) => (ms >= at(30) ? 4 : one.moistureFlags[i])),
    }));
    const blind = binMoisture({ ...INPUT, series: cut });
    expect(blind.pointsRemoved.value).toBeCloseTo(2.0012, 3);
    expect(blind.stages!.stages[2].points.value).toBeNull();
    expect(blind.stages!.perFullBushel.value).toBeNull();
    expect(blind.notes.join(' ')).toContain('is not counted');
  });

  it('tells no fan hours of a stage that the fans’ log leaves out, and what it leaves out in part in the upper end', () => {
    const whole = told.stages!.stages;
    const [first, ...rest] = [INPUT.spans.startMs[0], ...whole.slice(1).map(({ span }) => span.fromMs)];
    const of = { ...INPUT.spans };
    // The log begins a day into the second stage.
    const fromMs = rest[0] + DAY;
    const kept = [...of.state.keys()].filter((i) => of.endMs[i] > fromMs);
    const late = {
      startMs: Float64Array.from(kept, (i) => Math.max(fromMs, of.startMs[i])),
      endMs: Float64Array.from(kept, (i) => of.endMs[i]),
      state: Uint8Array.from(kept, (i) => of.state[i]),
      powerW: Float64Array.from(kept, (i) => of.powerW[i]),
    };
    const stages = binMoisture({ ...INPUT, spans: late }).stages!.stages;
    expect(first).toBeLessThan(rest[0]);
    expect(stages[0].fanHours).toMatchObject({ value: null, why: expect.stringContaining('No log') });
    const { value, interval } = stages[1].fanHours;
    expect(interval![0]).toBe(value);
    expect(interval![1]).toBeCloseTo(value! + 24, 6);
    expect(interval![1]).toBeGreaterThanOrEqual(whole[1].fanHours.value!);
    expect(stages[2].fanHours).toEqual(whole[2].fanHours);
  });

  it('has none for a bin of one depth', () => {
    const single = makeBin([CABLE], { depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 6 }] });
    expect(binMoisture({ ...INPUT, bin: single }).stages).toBeNull();
  });
});

describe('a bin that still counts as whole', () => {
  it('is less sure where it was topped up or cored in between', () => {
    const steps = (depths: readonly number[]) =>
      makeBin([CABLE], {
        depthSteps: depths.map((depthM, i) => ({ fromMs: i === 0 ? Number.NEGATIVE_INFINITY : at(20), depthM })),
        filledMs: at(10),
        unloadedMs: at(30),
      });
    const sd = (depths: readonly number[]) =>
      binMoisture({ ...INPUT, bin: steps(depths) }).errorParts.find((part) => part.cause.startsWith('grain topped up'))
        ?.sd ?? 0;
    expect(sd([6])).toBe(0);
    // Taken out: 0.6 of 6 m; the ends read 16 and 20 %: 0.1 * 4 / sqrt 3 = 0.2309.
    expect(sd([6, 5.4])).toBeCloseTo(0.2309, 4);
    // Topped up by 0.6 of 6 m: 0.1 * 2.0012 / sqrt 3 = 0.1155.
    expect(sd([5.4, 6])).toBeCloseTo(0.1155, 3);
  });
});

describe('depthStages', () => {
  it('takes levelling and settling for no change, and ends with the emptying', () => {
    const bin = makeBin([], {
      depthSteps: [
        { fromMs: at(0), depthM: 5 },
        { fromMs: at(1), depthM: 5.1 },
        { fromMs: at(40), depthM: 2 },
        { fromMs: at(41), depthM: 0 },
      ],
      unloadedMs: at(40),
    });
    expect(depthStages(bin, at(0) - HOUR, at(50))).toEqual([{ span: { fromMs: at(0), toMs: at(40) }, depthM: 5 }]);
  });
});
