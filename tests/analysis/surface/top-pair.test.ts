import { describe, expect, it } from 'vitest';
import { grainSurface } from '../../../src/analysis/surface/grain-surface.ts';
import { keptInput } from '../condition/kept-bin.ts';
import { FILM_M, halfSpace } from './half-space.ts';

const SURFACE_M = 5;
const HEIGHTS_M = [2.3, 2.9, 3.5, 4.1, 4.7];

/** A cable 60 cm from sensor to sensor, the grain at rest from the tenth day to the 130th; which readings there are. */
function told(isRead: (heightM: number, day: number) => boolean, weatherRead: (day: number) => boolean = () => true) {
  const grainAt = halfSpace(3);
  const input = keptInput({
    days: 130,
    heightsM: HEIGHTS_M,
    // Where a heap lies as high as the levelled depth.
    fromCentreM: 10 / 3,
    tempC: (heightM, day) => (isRead(heightM, day) ? grainAt(SURFACE_M + FILM_M - heightM, day) : null),
    outdoorC: (day) => (weatherRead(day) ? grainAt(0, day) - 2 : Number.NaN),
    fanOn: (day) => day < 10,
    depths: [{ day: 0, depthM: SURFACE_M }],
  });
  const { timeMs, tempC } = input.weather.temperatures;
  const kept = [...timeMs.keys()].filter((i) => !Number.isNaN(tempC[i]));
  const temperatures = {
    timeMs: Float64Array.from(kept, (i) => timeMs[i]),
    tempC: Float64Array.from(kept, (i) => tempC[i]),
  };
  return grainSurface({ ...input, weather: { ...input.weather, temperatures }, moistureWb: 0.15 });
}
const within = (found: ReturnType<typeof grainSurface>, offM: number) => {
  expect(found.depthM.value, found.depthM.why ?? '').not.toBeNull();
  expect(Math.abs(found.depthM.value! - SURFACE_M)).toBeLessThan(offM);
  const [low, high] = found.depthM.interval!;
  expect(low).toBeLessThan(SURFACE_M);
  expect(high).toBeGreaterThan(SURFACE_M);
  // A sensor that was read for a week alone leaves more than a metre.
  expect(high - low).toBeLessThan(0.8);
};

describe('the two sensors that tell where the grain ends', () => {
  it('are the next lower ones where the highest failed early', () => {
    within(
      told((heightM, day) => heightM < 4.7 || day < 16),
      0.25,
    );
    within(
      told((heightM, day) => heightM < 4.7 || day > 124),
      0.25,
    );
  });

  it('are the highest and the next but one where the one below failed', () => {
    within(
      told((heightM, day) => heightM !== 4.1 || day < 16),
      0.15,
    );
  });

  it('tell by the pieces between holes of the logger or of the weather', () => {
    const days = new Set([12, 13, 14, 40, 41, 42, 70, 71, 72]);
    const whole = (day: number) => !days.has(Math.floor(day));
    within(
      told((_, day) => whole(day)),
      0.15,
    );
    within(
      told(() => true, whole),
      0.15,
    );
  });
});
