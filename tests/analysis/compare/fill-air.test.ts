import { describe, expect, it } from 'vitest';
import { fillAir, outdoorLog } from '../../../src/analysis/compare/fill-air.ts';
import type { FanSpans } from '../../../src/analysis/types.ts';
import type { Bin } from '../../../src/season/season.ts';
import { psychrolibSi } from '../../support/psychrolib-si.ts';
import { madeBin } from './made-bin.ts';

const HOUR = 3_600_000;
const bin: Bin = madeBin({}).bin;
const START = bin.grain.filledMs as number;

/** Hourly weather from a day before filling on. */
function weather(hours: number, at: (hour: number) => { temp: number; rh?: number; dew?: number; flag?: number }) {
  const rows = Array.from({ length: hours }, (_, h) => at(h - 24));
  return outdoorLog({
    time: Float64Array.from(rows, (_, h) => START + (h - 24) * HOUR),
    temp_c: Float64Array.from(rows, (one) => one.temp),
    rh: Float64Array.from(rows, (one) => one.rh ?? Number.NaN),
    dew_point_c: Float64Array.from(rows, (one) => one.dew ?? Number.NaN),
    flags: Float64Array.from(rows, (one) => one.flag ?? 0),
  });
}
/** On from `fromH` to `toH` hours after filling. */
function fanOn(fromH: number, toH: number): FanSpans {
  return {
    startMs: Float64Array.of(START - 24 * HOUR, START + fromH * HOUR, START + toH * HOUR),
    endMs: Float64Array.of(START + fromH * HOUR, START + toH * HOUR, START + 3000 * HOUR),
    state: Uint8Array.of(0, 1, 0),
    powerW: Float64Array.of(0, 5000, 0),
  };
}
const noPlenum = { timeMs: new Float64Array(0), tempC: new Float64Array(0) };

describe('air at fill', () => {
  it('is the mean over fan-on hours of the first 21 days, and no others', () => {
    // 10 °C while the fan rests, 20 °C from hour 100 on, 30 °C after 21 days of it.
    const air = weather(1500, (h) => ({ temp: h < 100 ? 10 : h < 100 + 504 ? 20 : 30, rh: h < 100 ? 0.9 : 0.6 }));
    const found = fillAir(bin, fanOn(100, 1000), noPlenum, air);
    expect(found.fanHours).toBe(504);
    expect(found.outdoorC).toBeCloseTo(20, 1);
    expect(found.outdoorRh).toBeCloseTo(0.6, 2);
    expect(found.warmingFrom).toBe('stated');
  });

  // Corn at 25 °C and 70 %: modified Henderson D245.5 (A 6.6612e-5, B 1.9677, C 42.143) by hand:
  // ln(0.3) = -1.20397; / (6.6612e-5 × 67.143) = 269.19; ^(1/1.9677) = 17.18 % dry basis, 14.66 % wet.
  it('stands for the moisture at which the crop settles once the fan has warmed it', () => {
    // Outdoors 23 °C; the usual warming of 2 K takes it to 25 °C and 70 %. psychrolib tells the outdoor humidity.
    const rh = (0.7 * psychrolibSi('GetSatVapPres', 25)) / psychrolibSi('GetSatVapPres', 23);
    const found = fillAir(
      bin,
      fanOn(10, 400),
      noPlenum,
      weather(600, () => ({ temp: 23, rh })),
    );
    expect(found.equilibriumWb.value).toBeCloseTo(0.1466, 3);
    const [low, high] = found.equilibriumWb.interval as [number, number];
    expect(low).toBeLessThan(0.1466);
    expect(high).toBeGreaterThan(0.1466);
    // Drawn down it is not warmed, so it is damper as it enters.
    const down = fillAir(
      { ...bin, air: 'down' },
      fanOn(10, 400),
      noPlenum,
      weather(600, () => ({ temp: 23, rh })),
    );
    expect(down.warmingFrom).toBe('none');
    expect(down.equilibriumWb.value).toBeGreaterThan(0.15);
  });

  it('is not told past a heater whose warming no plenum reading tells', () => {
    const air = weather(600, () => ({ temp: 23, rh: 0.6 }));
    const heated = fillAir(bin, fanOn(10, 400), noPlenum, air, true);
    expect(heated.equilibriumWb).toMatchObject({ value: null, why: expect.stringMatching(/heater warms the air/) });
    expect(heated.warmingFrom).toBeNull();
    expect(heated.outdoorC).toBeCloseTo(23, 6);
    // Air drawn down has not passed it.
    const down = fillAir({ ...bin, air: 'down' }, fanOn(10, 400), noPlenum, air, true);
    expect(down.equilibriumWb.value).not.toBeNull();
  });

  it('takes humidity from the dew point where that alone is logged', () => {
    const dew = psychrolibSi('GetTDewPointFromRelHum', 15, 0.65);
    expect(
      fillAir(
        bin,
        fanOn(10, 400),
        noPlenum,
        weather(600, () => ({ temp: 15, dew })),
      ).outdoorRh,
    ).toBeCloseTo(0.65, 2);
  });

  it('is not told where the weather is lacking, not believed or without humidity, and says so', () => {
    const half = weather(600, (h) => ({ temp: h < 150 ? 12 : Number.NaN, rh: 0.7 }));
    expect(fillAir(bin, fanOn(10, 400), noPlenum, half)).toMatchObject({
      outdoorC: null,
      why: expect.stringContaining('less than 80 %'),
    });
    const flagged = weather(600, () => ({ temp: 12, rh: 0.7, flag: 2 }));
    expect(fillAir(bin, fanOn(10, 400), noPlenum, flagged).outdoorC).toBeNull();
    const dry = fillAir(
      bin,
      fanOn(10, 400),
      noPlenum,
      weather(600, () => ({ temp: 12 })),
    );
    expect(dry.outdoorC).toBeCloseTo(12, 6);
    expect(dry).toMatchObject({ outdoorRh: null, why: expect.stringContaining('humidity') });
    const never: FanSpans = { ...fanOn(10, 400), state: Uint8Array.of(0, 0, 0) };
    expect(fillAir(bin, never, noPlenum, half).why).toContain('never ran');
  });
});
