import { describe, expect, it } from 'vitest';
import { pushSpan, spanList, toFanSpans } from '../../src/analysis/fan/spans.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../src/analysis/types.ts';
import { zoneOf } from '../../src/base/zone.ts';
import { nightShare } from '../../src/notebook/fan-days.ts';

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
});
