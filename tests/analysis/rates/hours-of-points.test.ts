import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { moistureRates } from '../../../src/analysis/rates/moisture-rates.ts';
import { type BinFan, FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { estimate } from '../../../src/base/estimate.ts';
import { DAY, HOUR, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from '../moisture/make-bin.ts';

/*
 * Worked by hand. Half of the bin comes in on day 0, the other half on day 10. The fan of 10 kW runs 120 h on the first
 * half, and from day 12 on 100 h of each 120 h (four runs) on the full bin, which loses 0.5 point in 100 fan hours: 2 points.
 * The points begin on the full bin, so they took 400 h, 200 h and 2,000 kWh each; by all 520 h it would be 260 h.
 */
const CABLE = makeCable('C', 2, 1.5, 4.5);
const BIN = makeBin([CABLE], {
  depthSteps: [
    { fromMs: T0, depthM: 3 },
    { fromMs: T0 + 10 * DAY, depthM: 6 },
  ],
  filledMs: T0 + 10 * DAY,
  unloadedMs: T0 + 60 * DAY,
});
const RUN = [
  [100, FAN_ON],
  [20, FAN_OFF],
] as const;
const SPANS = makeSpans([72, FAN_OFF], [120, FAN_ON], [96, FAN_OFF], ...RUN, ...RUN, ...RUN, ...RUN, [
  60 * 24 - 288 - 480,
  FAN_OFF,
]);
const ranBy = (hour: number) => {
  const since = hour - 288;
  return since < 0 ? 0 : Math.min(400, 100 * Math.floor(since / 120) + Math.min(100, since % 120));
};
const full = (hour: number) => 0.2 - 0.00005 * ranBy(hour);

describe('points by fan hours of a bin whose fan ran while it was being filled', () => {
  const hours = estimate(520, 520, 520);
  const moisture = binMoisture({
    bin: BIN,
    season: makeSeason(),
    series: [makeSeries(CABLE, 1, 0, 60 * 24, full), makeSeries(CABLE, 2, 240, 60 * 24, full)],
    spans: SPANS,
    fanHours: hours,
    tickets: [],
  });
  const fan = {
    hours,
    unknownHours: 0,
    spans: SPANS,
    energyKwh: estimate(5200, 5200, 5200),
    fans: [{ energyKwh: 5200, energyRelSd: 0, energyFrom: 'meter', onHours: 520 }],
    months: [],
  } as unknown as BinFan;
  const { season, line, notes } = moistureRates(fan, moisture, 'America/Chicago');

  it('start to end and the line through all days have one count of fan hours, from where the points begin', () => {
    expect(moisture.pointsRemoved.value).toBeCloseTo(2, 6);
    expect(moisture.perHundredFanHours.value).toBeCloseTo(0.5, 6);
    expect(season?.fanHours).toBe(400);
    expect(line?.fanHours).toBe(400);
    expect(season?.hoursPerPoint.value).toBeCloseTo(200, 6);
    // Days are told by their middle, in which the fan may have stood for part of the day.
    expect(line!.hoursPerPoint.value! / 200).toBeCloseTo(1, 1);
  });

  it('the energy of a point is that of its hours, and a note says what stays out', () => {
    expect(season?.kwhPerPoint.value).toBeCloseTo(2000, 6);
    expect(notes.join(' ')).toMatch(/Of 520 fan hours on grain 120 h ran before the moisture at the start was read/);
  });

  it('what the rest lost after the first grain was taken out counts with its hours', () => {
    const drawn = makeBin([CABLE], {
      ...BIN.grain,
      depthSteps: [...BIN.grain.depthSteps, { fromMs: T0 + 524 * HOUR, depthM: 3 }],
    });
    const told = binMoisture({
      bin: drawn,
      season: makeSeason(),
      series: [makeSeries(CABLE, 1, 0, 60 * 24, full), makeSeries(CABLE, 2, 240, 524, full)],
      spans: SPANS,
      fanHours: hours,
      tickets: [],
    });
    // Drawn four hours before the third run: two runs on the whole bin, 1 point; two on its half, 1 point on half of the grain.
    expect(told.pointsRemoved.value).toBeCloseTo(1.5, 2);
    expect(told.pointsTime?.fanHours.value).toBe(400);
  });
});
