import { describe, expect, it } from 'vitest';
import { fanHoursBetween, pushSpan, spanList, toFanSpans } from '../../src/analysis/fan/spans.ts';
import { withoutMoments } from '../../src/analysis/fan/untimed-stretches.ts';
import { type BinReview, FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans } from '../../src/analysis/types.ts';
import { estimate } from '../../src/base/estimate.ts';
import { zoneOf } from '../../src/base/zone.ts';
import { fanClockFigure } from '../../src/notebook/fan-clock-figure.ts';
import { nightShare } from '../../src/notebook/fan-days.ts';
import { Units } from '../../src/report/units.ts';

const HOUR = 3_600_000;
/** Midnight of 1 October 2024 in Chicago. */
const START = Date.UTC(2024, 9, 1, 5);
const ZONE = zoneOf('America/Chicago');

function spansOf(...pieces: readonly (readonly [from: number, to: number, state: number])[]) {
  const list = spanList();
  for (const [from, to, state] of pieces)
    pushSpan(list, START + from * HOUR, START + to * HOUR, state, state === FAN_ON ? 1000 : 0);
  return toFanSpans(list);
}

describe('the share of the fan hours between 22:00 and 6:00', () => {
  it('is counted from the log where it is whole', () => {
    // 18:00 to 2:00: four of eight hours by night.
    expect(nightShare(spansOf([0, 18, FAN_OFF], [18, 26, FAN_ON]), ZONE)).toEqual({
      value: 0.5,
      interval: [0.5, 0.5],
      why: null,
    });
    expect(nightShare(spansOf([0, 18, FAN_OFF]), ZONE)).toBeNull();
  });

  it('reaches over a silence as far as running by day or by night alone would move it', () => {
    // A day of silence from 2:00 on: 2:00 to 6:00 and 22:00 to 2:00, eight hours of night and sixteen of day.
    const told = nightShare(spansOf([0, 18, FAN_OFF], [18, 26, FAN_ON], [26, 50, FAN_UNKNOWN]), ZONE)!;
    expect(told.value).toBe(0.5);
    expect(told.interval![0]).toBeCloseTo(4 / (8 + 16), 12);
    expect(told.interval![1]).toBeCloseTo((4 + 8) / (8 + 8), 12);
  });

  it('and over hours of which a meter tells how many, but not when, as far as any of their moments would move it', () => {
    // 18:00 to 2:00; then half of each of the 22 hours to midnight. Of these 2 to 6 and 22 to 24 are night.
    const laid = Array.from({ length: 22 }, (_, h) => [
      [26 + h, 26.5 + h, FAN_ON] as const,
      [26.5 + h, 27 + h, FAN_OFF] as const,
    ]).flat();
    const untimed = [{ fromMs: START + 26 * HOUR, toMs: START + 48 * HOUR }];
    const spans = spansOf([0, 18, FAN_OFF], [18, 26, FAN_ON], ...laid);
    const told = nightShare(spans, ZONE, untimed)!;
    expect(told.value).toBeCloseTo((4 + 3) / (8 + 11), 12);
    // 11 h in 22 of which six are night: none of them at least, six at most.
    expect(told.interval![0]).toBeCloseTo(4 / 19, 12);
    expect(told.interval![1]).toBeCloseTo(10 / 19, 12);
  });
});

describe('the figure of the hours of the day', () => {
  it('hatches the time between the readings of such a meter, and says so', () => {
    const two: FanSpans = {
      startMs: Float64Array.of(START, START + 18 * HOUR, START + 26 * HOUR, START + 37 * HOUR),
      endMs: Float64Array.of(START + 18 * HOUR, START + 26 * HOUR, START + 37 * HOUR, START + 48 * HOUR),
      state: Uint8Array.of(FAN_OFF, FAN_ON, FAN_ON, FAN_OFF),
      powerW: Float64Array.of(0, 1000, 1000, 0),
    };
    const fans = [{ spread: [{ fromMs: START + 26 * HOUR, toMs: START + 48 * HOUR }] }];
    const of = (spread: typeof fans) =>
      fanClockFigure(
        {
          bin: { name: 'North' },
          fan: { spans: two, fans: spread, hours: estimate(19, 19, 19), unknownHours: 0 },
        } as unknown as BinReview,
        new Units('us', 'USD', 'America/Chicago'),
      );
    expect(of(fans).notShown).toMatch(/^Of 11\.0 h, measured, a meter tells how many, not when/);
    expect(of(fans).title).toMatch(/\(.+ to .+\)/);
    expect(of([]).notShown).toBeNull();
    // The run before the stretch joins with its first hours, as in a log of a whole day and a part of the next.
    const joined: FanSpans = {
      startMs: Float64Array.of(START, START + 18 * HOUR, START + 37 * HOUR),
      endMs: Float64Array.of(START + 18 * HOUR, START + 37 * HOUR, START + 48 * HOUR),
      state: Uint8Array.of(FAN_OFF, FAN_ON, FAN_OFF),
      powerW: Float64Array.of(0, 1000, 0),
    };
    const hidden = withoutMoments(joined, fans[0].spread);
    expect(fanHoursBetween(joined) - fanHoursBetween(hidden)).toBe(11);
    const drawn = (spread: typeof fans) => of(spread).draw({ width: 600, narrow: false, idPrefix: 'x' });
    expect(drawn(fans)).not.toBe(drawn([]));
  });
});
