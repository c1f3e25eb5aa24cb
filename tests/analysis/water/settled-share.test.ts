import { describe, expect, it } from 'vitest';
import { FAN_OFF, FAN_ON, type FanSpans } from '../../../src/analysis/types.ts';
import { settledShare } from '../../../src/analysis/water/settled-share.ts';

const HOUR = 3_600_000;

/** Hours off, on, off, on and so on from 0. */
function spansOf(...hours: number[]): FanSpans {
  const ends = hours.map((_, i) => hours.slice(0, i + 1).reduce((sum, one) => sum + one, 0) * HOUR);
  return {
    startMs: Float64Array.from([0, ...ends.slice(0, -1)]),
    endMs: Float64Array.from(ends),
    state: Uint8Array.from(hours, (_, i) => (i % 2 === 0 ? FAN_OFF : FAN_ON)),
    powerW: Float64Array.from(hours, (_, i) => (i % 2 === 0 ? 0 : 5000)),
  };
}
const share = (spans: FanSpans) => settledShare(spans, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);

describe('share of the running in which the bed has settled', () => {
  // By hand: of 100 h the first 24 do not count.
  it('leaves out the first day of a run', () => expect(share(spansOf(5, 100, 5))).toBeCloseTo(0.76, 9));
  // Eight hours a week: each run begins anew after 160 h of rest.
  it('is nothing for weekly runs of eight hours', () => expect(share(spansOf(0, 8, 160, 8, 160, 8, 160))).toBe(0));
  // Ten nights of eight hours, 16 h apart, are one run of 80 h: 56 of 80.
  it('takes nights on end for one run', () => {
    const nights = Array.from({ length: 10 }, () => [16, 8]).flat();
    expect(share(spansOf(...nights, 16))).toBeCloseTo(0.7, 9);
  });
  it('counts only while grain is in the bin', () => {
    expect(settledShare(spansOf(0, 100, 5), 50 * HOUR, 100 * HOUR)).toBeCloseTo(26 / 50, 9);
  });
  it('is not known of fans that did not run', () => expect(share(spansOf(10))).toBeNaN());
});
