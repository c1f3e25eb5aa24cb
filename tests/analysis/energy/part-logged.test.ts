import { describe, expect, it } from 'vitest';
import type { Fan } from '../../../src/bin/fan.ts';
import { H } from '../fan/known-fan.ts';
import { bin, FAN_T, powerRows, rest, review, seasonOf, start } from './by-hand-season.ts';

describe('logs that leave out a part of the season', () => {
  const two: Fan = { ...FAN_T, id: 'F2' };
  const season = seasonOf([FAN_T, two], [bin('B1', ['F1', 'F2'])]);
  // F1: ten hours of rest, 100 h at 15 kW, 90 h of rest. F2 ran beside it at 10 kW, but its log begins only at hour 60.
  const first = powerRows([rest(10), [100, 15_000], rest(90)]);
  const second = powerRows([rest(10), [100, 10_000], rest(90)], 'F2');
  const late = second.filter(({ time }) => time >= start + 60 * H);

  it('a fan whose log begins later than the other’s: what it may have used is in the upper ends of energy and cost', () => {
    const whole = review([...first, ...second], season);
    const cut = review([...first, ...late], season);
    expect(whole.energyKwh.value).toBeCloseTo(2500, 6);
    // Known: 1,500 and 50 h x 10 kW. Unknown: 60 h, 600 kWh of F2 and 60 USD at most; the truth is 500 of them.
    expect(cut.energyKwh.value).toBeCloseTo(2000, 6);
    expect(cut.energyKwh.interval![1]).toBeGreaterThanOrEqual(2600);
    expect(cut.energyCost.interval![1]).toBeGreaterThanOrEqual(200 + 60);
    for (const key of ['hours', 'energyKwh', 'energyCost', 'cost'] as const) {
      expect(cut[key].interval![0], key).toBeLessThanOrEqual(whole[key].value!);
      expect(cut[key].interval![1], key).toBeGreaterThanOrEqual(whole[key].value!);
    }
    expect(whole.unknownHours).toBe(0);
  });

  it.each([
    ['ends before any grain was in', start + 300 * H, null],
    ['begins after all grain was out', start - 900 * H, start - 10 * H],
  ] as const)('a log that %s tells nothing of the bin', (words, filledMs, unloadedMs) => {
    const own = bin('B1', ['F1'], filledMs);
    const dated = seasonOf([FAN_T], [{ ...own, grain: { ...own.grain, unloadedMs } }]);
    const got = review(first, dated);
    for (const key of ['hours', 'energyKwh', 'cost', 'costPerBushel'] as const) {
      expect(got[key].value, key).toBeNull();
      expect(got[key].why, key).toContain(words);
    }
    // A log that meets the grain for a while is told as far as it goes.
    const meets = seasonOf([FAN_T], [bin('B1', ['F1'], start + 150 * H)]);
    expect(review(first, meets).hours.value).toBe(100);
  });
});
