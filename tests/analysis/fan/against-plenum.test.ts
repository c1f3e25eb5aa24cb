import { describe, expect, it } from 'vitest';
import { againstPlenum } from '../../../src/analysis/fan/against-plenum.ts';
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
