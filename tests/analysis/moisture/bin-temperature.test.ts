import { describe, expect, it } from 'vitest';
import { binTemperature } from '../../../src/analysis/moisture/bin-temperature.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { DAY, HOUR, makeBin, makeSpans, T0 } from './make-bin.ts';
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

  // Grain of 26 C, 12 fan hours of 18.2 C outdoors before anybody read the cables by hand: at 0.5 cfm/bu a front passes 12 x 0.5 / 15 = 0.4
  // of the bin. By hand: air of 18.2 + 0.8 of warming = 19, and 26 + 0.4 (19 - 26) = 23.2 is what was read.
  it('reaches from the first reading back to what the fan hours before it may have cooled', () => {
    const bin = makeBin([CENTRE, RING], {}, { goal: 'cool', air: 'up' });
    const from = 90;
    const series = SERIES.map((one) => ({
      ...one,
      timeMs: one.timeMs.slice(from),
      tempC: one.tempC.slice(from).fill(23.2),
      moistureWb: one.moistureWb.slice(from),
      tempFlags: one.tempFlags.slice(from),
      moistureFlags: one.moistureFlags.slice(from),
      rows: one.rows.slice(from),
    }));
    const hours = { length: 320 };
    const weather = {
      timeMs: Float64Array.from(hours, (_, hour) => T0 + hour * HOUR),
      tempC: Float64Array.from(hours, (_, hour) => (hour >= 40 && hour < 52 ? 18.2 : 23.2)),
    };
    const around = { errors: { accuracyK: 0.1, noiseK: 0.1, biasK: 0.1 }, weather };
    const of = (onHours: number) => {
      const rest = 320 - 40 - onHours;
      return binTemperature(bin, series, makeSpans([40, FAN_OFF], [onHours, FAN_ON], [rest, FAN_OFF]), around);
    };
    const [low, high] = of(12).start.interval!;
    expect(of(12).start.value).toBeCloseTo(23.2, 9);
    expect(high).toBeGreaterThan(26);
    // Nothing may have been colder before: downwards the sensors' errors and the edges alone, as with a fan that rested.
    const [restLow, restHigh] = binTemperature(bin, series, makeSpans([320, FAN_OFF]), around).start.interval!;
    // The run flushes the edges a little, a tenth of a degree.
    expect(Math.abs(low - restLow)).toBeLessThan(0.15);
    expect(Math.abs(high - restHigh - (26 - 23.2))).toBeLessThan(0.15);
    // 20 h may have passed two thirds of it.
    expect(of(20).start.value).toBeNull();
    expect(of(20).why).toMatch(/about 20 fan hours after filling, too late to tell the temperature at the start/);
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
