import { describe, expect, it } from 'vitest';
import { levelPower } from '../../../src/analysis/fan/level-power.ts';
import { randomOf } from './known-fan.ts';

describe('level of sampled power', () => {
  const minutes = (count: number, every: number) => Float64Array.from({ length: count }, (_, i) => i * every * 60_000);
  const on = (count: number) => new Uint8Array(count).fill(1);

  it('two thousand readings of 10 kW with noise of 2 % peak near 10 kW, not 7 % above, and keep their mean', () => {
    const random = randomOf(7);
    const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const watt = Float64Array.from({ length: 2000 }, () => 10_000 * (1 + 0.02 * gauss()));
    const level = levelPower(minutes(2000, 10), watt, on(2000));
    expect(Math.max(...watt)).toBeGreaterThan(10_500);
    // 37 readings with noise of 2 % leave 0.33 %; the highest of some sixty independent levels is 2.4 of these
    expect(Math.max(...level)).toBeLessThan(10_150);
    const mean = (values: Float64Array) => values.reduce((a, b) => a + b, 0) / values.length;
    expect(mean(level) / mean(watt)).toBeCloseTo(1, 3);
  });
  it('a heater that joins for half an hour keeps its own level, and so does the fan', () => {
    const watt = Float64Array.from({ length: 60 }, (_, i) => (i % 12 < 3 ? 26_000 : 11_000));
    expect([...levelPower(minutes(60, 10), watt, on(60))]).toEqual([...watt]);
  });
  it('a rest keeps two runs apart; off samples stay as read', () => {
    const watt = Float64Array.of(10_000, 10_000, 40, 10_800, 10_800);
    const state = Uint8Array.of(1, 1, 0, 1, 1);
    expect([...levelPower(minutes(5, 10), watt, state)]).toEqual([...watt]);
  });
});
