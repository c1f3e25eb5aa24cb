import { describe, expect, it } from 'vitest';
import { binTemperature } from '../../../src/analysis/moisture/bin-temperature.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { DAY, makeBin, makeSpans, T0 } from './make-bin.ts';
import { BIN, CENTRE, RING, SERIES, SPANS } from './two-cables.ts';

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

  // Filled at 30 C; 6 h at rest, then 10 h of cold air that take each place to 12 C, then rest: the grain came in at 30.
  it('starts at what the grain was before the first night of cooling, not half-way; ends at what the last one left', () => {
    const cooled = (hour: number) => (hour < 6 ? 30 : hour < 314 ? 12 : 4);
    const series = SERIES.map((one) => ({ ...one, tempC: one.tempC.map((_, hour) => cooled(hour)) }));
    const spans = makeSpans([6, FAN_OFF], [10, FAN_ON], [288, FAN_OFF], [10, FAN_ON], [6, FAN_OFF]);
    const told = binTemperature(BIN, series, spans);
    expect(told.start.value).toBeCloseTo(30, 9);
    expect(told.end.value).toBeCloseTo(4, 9);
    // A run of 2 h within the day changes little, and the whole day counts: (4 + 12 readings) of still air.
    const short = binTemperature(BIN, series, makeSpans([6, FAN_OFF], [2, FAN_ON], [312, FAN_OFF]));
    expect(short.start.window!.toMs - short.start.window!.fromMs).toBe(DAY);
    expect(short.start.value).toBeLessThan(30);
  });

  // A sensor whose log begins after the run would be lost: the whole day stands.
  it('keeps the whole day where a sensor was first read after the running', () => {
    const cooled = (hour: number) => (hour < 6 ? 30 : 12);
    const series = SERIES.map((one, i) => {
      const from = i === 0 ? 17 : 0;
      return {
        ...one,
        timeMs: one.timeMs.slice(from),
        tempC: one.tempC.map((_, hour) => cooled(hour)).slice(from),
        moistureWb: one.moistureWb.slice(from),
        tempFlags: one.tempFlags.slice(from),
        moistureFlags: one.moistureFlags.slice(from),
        rows: one.rows.slice(from),
      };
    });
    const told = binTemperature(BIN, series, makeSpans([6, FAN_OFF], [10, FAN_ON], [304, FAN_OFF]));
    expect(told.start.sensors).toBe(4);
    expect(told.start.value).toBeLessThan(30);
  });

  it('is withheld when the log begins long after filling', () => {
    const bin = makeBin([CENTRE, RING], { filledMs: T0 - 30 * DAY });
    const told = binTemperature(bin, SERIES, SPANS);
    expect(told.start.value).toBeNull();
    expect(told.why).toContain('30 days');
    expect(told.end.value).toBe(10);
    // Without a fan log the fan hours in between are not known, and not 0.
    expect(binTemperature(bin, SERIES, null).why).toBe(
      'The first believable temperatures come 30 days after filling, and no fan log tells what happened in between.',
    );
  });
});
