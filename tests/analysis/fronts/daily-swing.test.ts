import { expect, it } from 'vitest';
import { dailySwing } from '../../../src/analysis/fronts/daily-swing.ts';
import { HOUR_MS, START_MS } from './invented-bin.ts';

const sensor = (tempAt: (hour: number) => number) => {
  const hours = Float64Array.from({ length: 97 }, (_, i) => i);
  return {
    cable: 'C1',
    sensor: 1,
    heightM: 1,
    timeMs: hours.map((h) => START_MS + h * HOUR_MS),
    tempC: hours.map(tempAt),
  };
};
const swings = (...told: ((hour: number) => number)[]) =>
  dailySwing(told.map(sensor), Float64Array.of(START_MS + 48 * HOUR_MS, START_MS + 72 * HOUR_MS));

// By hand: a cosine of amplitude 5 K has a range of 10 K over any whole day and no trend.
it('is the amplitude of the daily wave in the grain, mean over sensors', () => {
  const wave = (hour: number) => 12 + 5 * Math.cos((2 * Math.PI * hour) / 24);
  for (const swingK of swings(wave)) expect(swingK).toBeCloseTo(5, 6);
  for (const swingK of swings(wave, () => 12)) expect(swingK).toBeCloseTo(2.5, 6);
});

it('a front that passes is no swing, nor is grain that stands still', () => {
  for (const swingK of swings((hour) => (hour < 60 ? 20 : 8))) expect(swingK).toBeCloseTo(0, 6);
  for (const swingK of swings((hour) => 20 - hour / 10)) expect(swingK).toBeCloseTo(0, 6);
  expect([...dailySwing([], Float64Array.of(START_MS))]).toEqual([0]);
});
