import { describe, expect, it } from 'vitest';
import type { MomentMean } from '../../../src/analysis/moisture/moisture-types.ts';
import { FAN_OFF, type FanSpans } from '../../../src/analysis/types.ts';
import { ofLoggedTime } from '../../../src/analysis/unit-costs/unlogged-time.ts';
import { estimate } from '../../../src/base/estimate.ts';

const day = (count: number) => Date.UTC(2024, 9, 1) + count * 86_400_000;
const spans = (from: number, to: number) =>
  ({
    startMs: Float64Array.of(day(from)),
    endMs: Float64Array.of(day(to)),
    state: Uint8Array.of(FAN_OFF),
  }) as unknown as FanSpans;
const moment = (from: number) => ({ window: { fromMs: day(from), toMs: day(from + 1) } }) as MomentMean;
const COST = estimate(300, 290, 310);

describe('what the fans cost between two moistures', () => {
  // Moisture read on day 0 and on day 150.
  const read = { start: moment(0), end: moment(150) };

  it('is told where the log covers the time, but for two days at either end', () => {
    expect(ofLoggedTime(COST, { spans: spans(0, 151) }, read)).toBe(COST);
    expect(ofLoggedTime(COST, { spans: spans(2.9, 148.1) }, read)).toBe(COST);
  });

  it('is withheld where the log ends long before the moisture at the end was read', () => {
    const { value, why } = ofLoggedTime(COST, { spans: spans(0, 75) }, read);
    expect(value).toBeNull();
    expect(why).toContain('ends 75 days before the moisture at the end was read');
  });

  it('is withheld where the log begins long after that at the start', () => {
    expect(ofLoggedTime(COST, { spans: spans(21, 151) }, read).why).toContain('begins 20 days after');
  });

  it('is not held against moistures that were stated or weighed', () => {
    const stated = { start: { ...moment(0), window: null }, end: { ...moment(150), window: null } };
    expect(ofLoggedTime(COST, { spans: spans(21, 75) }, stated)).toBe(COST);
  });
});
