import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grainVolumeM3, levelledDepthM, peakHeightOfReposeM } from '../../src/bin/grain-volume.ts';

const BUSHEL_M3 = 2150.42 * 0.0254 ** 3; // US bushel of 2150.42 cubic inches

describe('volume of grain', () => {
  it('of a level cylinder, by hand: 36 ft across, 20 ft deep is 16,359 bushels', () => {
    // pi / 4 * 36^2 * 20 = 20357.52 ft3; over 2150.42 / 1728 = 1.244456 ft3: 16358.6
    const volume = grainVolumeM3({ diameterM: 36 * 0.3048, wallDepthM: 20 * 0.3048 });
    expect(Math.round(volume / BUSHEL_M3)).toBe(16_359);
  });
  it('adds a third of the cylinder that a peak, a hollow or a hopper would fill', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 30, noNaN: true }),
        fc.double({ min: 3, max: 12, noNaN: true }),
        fc.double({ min: -2.9, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (diameterM, wallDepthM, peakHeightM, hopperHeightM) => {
          const depth = levelledDepthM({ diameterM, wallDepthM, peakHeightM, hopperHeightM });
          expect(depth).toBeCloseTo(wallDepthM + (peakHeightM + hopperHeightM) / 3, 9);
        },
      ),
      { seed: 20240926, numRuns: 200 },
    );
  });
  it('of a cored bin: the hollow takes only what lies within its own radius', () => {
    const level = grainVolumeM3({ diameterM: 10, wallDepthM: 6 });
    const cored = grainVolumeM3({ diameterM: 10, wallDepthM: 6, peakHeightM: -1.5, peakRadiusM: 2 });
    expect(level - cored).toBeCloseTo((Math.PI * 4 * 1.5) / 3, 9);
  });
  it('a heap at 45 degrees is as high as half the bin is wide', () => {
    expect(peakHeightOfReposeM(11, 45)).toBeCloseTo(5.5, 12);
  });
  it('refuses no numbers and shapes that cannot be', () => {
    expect(() => grainVolumeM3({ diameterM: Number.NaN, wallDepthM: 5 })).toThrow(/diameterM is NaN/);
    expect(() => grainVolumeM3({ diameterM: 10, wallDepthM: -1 })).toThrow(/wallDepthM is -1/);
    expect(() => grainVolumeM3({ diameterM: 10, wallDepthM: 2, peakHeightM: -3 })).toThrow(/peakHeightM is -3/);
    expect(() => grainVolumeM3({ diameterM: 10, wallDepthM: 2, peakHeightM: 1, peakRadiusM: 6 })).toThrow(
      /peakRadiusM is 6/,
    );
    expect(() => peakHeightOfReposeM(10, 80)).toThrow(/reposeDeg is 80/);
  });
});
