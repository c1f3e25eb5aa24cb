import { describe, expect, it } from 'vitest';
import { againstPlenum } from '../../../src/analysis/fan/against-plenum.ts';
import { beyondPlenum } from '../../../src/analysis/fan/beyond-plenum.ts';
import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';
import { H } from './known-fan.ts';

const start = Date.UTC(2024, 9, 1);
const HOURS = 1000;
const timeMs = Float64Array.from({ length: HOURS + 1 }, (_, h) => start + h * H);
const none = new Uint8Array(HOURS + 1);
// At work from hour 100 to 400, 700 Pa and some; else a draught of a few pascals.
const worked = (h: number) => h >= 100 && h < 400;
const pressure = (at: (h: number) => number) => Float64Array.from(timeMs, (_, h) => at(h));
const good = pressure((h) => (worked(h) ? 700 + (h % 7) : h % 5));
const spans = (parts: readonly (readonly [number, number])[]) => {
  const list = spanList();
  let at = 0;
  for (const [hours, state] of parts) {
    pushSpan(list, start + at * H, start + (at + hours) * H, state, state === FAN_ON ? 9000 : 0);
    at += hours;
  }
  return toFanSpans(list);
};
const off = spans([[HOURS, FAN_OFF]]);

describe('fan hours by the plenum and by the log, counted by hand: 300 h of work', () => {
  it('a log that never says on, and one that is unknown then', () => {
    expect(againstPlenum(timeMs, good, none, off)).toEqual({ plenumHours: 300, logHours: 0 });
    const silent = spans([
      [100, FAN_OFF],
      [300, FAN_UNKNOWN],
      [600, FAN_OFF],
    ]);
    expect(againstPlenum(timeMs, good, none, silent)).toEqual({ plenumHours: 300, logHours: 0 });
  });
  it('a log on another clock has the same hours', () => {
    const late = spans([
      [150, FAN_OFF],
      [300, FAN_ON],
      [550, FAN_OFF],
    ]);
    expect(againstPlenum(timeMs, good, none, late)?.logHours).toBe(300);
  });
  it('air drawn down makes the pressure negative', () => {
    expect(
      againstPlenum(
        timeMs,
        good.map((pa) => -pa),
        none,
        off,
      )?.plenumHours,
    ).toBe(300);
  });
  it.each([
    ['no pressure at all', pressure(() => Number.NaN)],
    ['less than a day of it', pressure((h) => (h >= 100 && h < 120 ? 700 : 0))],
    ['an offset that never rests', pressure((h) => 60 + (h % 5))],
    ['an offset that drifts about 50 Pa', pressure((h) => 40 + 20 * Math.sin(h / 50))],
    ['a sensor frozen at work', pressure((h) => (h < 100 ? h % 5 : 700))],
  ])('%s tells nothing', (_, pa) => {
    expect(againstPlenum(timeMs, pa, none, off)).toBeNull();
  });
  it('flagged readings do not count', () => {
    expect(againstPlenum(timeMs, good, new Uint8Array(HOURS + 1).fill(1), off)).toBeNull();
  });
  it('at work is what it is when the log says on: a drift of 60 Pa beside 700 is rest', () => {
    const drift = pressure((h) => (worked(h) ? 700 + (h % 7) : 60 + (h % 5)));
    const right = spans([
      [100, FAN_OFF],
      [300, FAN_ON],
      [600, FAN_OFF],
    ]);
    expect(againstPlenum(timeMs, drift, none, right)).toEqual({ plenumHours: 300, logHours: 300 });
  });
});

describe('a log that says more than the plenum: 12 h of work a day for 40 days, by hand 480 h', () => {
  const daily = (h: number) => h % 24 < 12;
  const lives = pressure((h) => (daily(h) && h < 960 ? 700 + (h % 7) : h % 5));
  const on = spans([[HOURS, FAN_ON]]);
  const told = (pa: Float64Array, log = on) => beyondPlenum(timeMs, pa, none, log);

  it('stuck at on: both are counted between the first day of work and the last', () => {
    // 480 h of work and the 39 nights of 12 h between them.
    expect(told(lives)).toEqual({ plenumHours: 480, logHours: 948 });
  });
  it('a log that is right says no more', () => {
    const right = spans(Array.from({ length: 40 }, () => [[12, FAN_ON] as const, [12, FAN_OFF] as const]).flat());
    expect(told(lives, right)).toEqual({ plenumHours: 480, logHours: 480 });
  });
  it('where the sensor may be dead the log is not held against it: zero for weeks, never at work, frozen, once only', () => {
    // Ten days of it alive, then none: of these alone 120 h and 9 nights of 12.
    expect(told(pressure((h) => (daily(h) && h < 240 ? 700 + (h % 7) : 0)))).toEqual({
      plenumHours: 120,
      logHours: 228,
    });
    // A tube that is off for eight days between two weeks of steady work.
    expect(told(pressure((h) => (h > 300 && h < 500 ? 0 : 700 + (h % 7))))).toBeNull();
    expect(told(pressure(() => 0))).toBeNull();
    expect(told(pressure((h) => (h < 500 ? 0 : 700)))).toBeNull();
    // A wire that drops out for single hours.
    expect(told(pressure((h) => (h % 2 === 0 ? 700 + (h % 7) : 0)))).toBeNull();
  });
  it('a fan at half speed, or one of two, makes a pressure that is no rest', () => {
    expect(told(pressure((h) => (daily(h) ? 200 + (h % 7) : 45)))).toBeNull();
  });
});
