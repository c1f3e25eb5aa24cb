import { describe, expect, it } from 'vitest';
import { cableAt } from '../../../src/analysis/probes/cable-at.ts';

const at = (heightM: number, value: number, sensor: number) => ({
  heightM,
  value,
  sensor,
  sd: 0.1,
  air: 'still' as const,
});
const CABLE = [at(1, 0.14, 1), at(3, 0.18, 2)];

describe('cableAt', () => {
  it('lies on the line between two sensors, unsure by the front that may stand there', () => {
    // Half-way, 4 points apart over 2 m: sharpness 1 - 0.45/2 = 0.775; 0.775 * 4 * sqrt(1/4) = 1.55; half a foot of height
    // 2 points/m * 0.15 m = 0.3; readings 0.1 / sqrt 2 = 0.0707. Together sqrt(2.4025 + 0.09 + 0.005) = 1.58035.
    const found = cableAt(CABLE, 2)!;
    expect(found.value).toBeCloseTo(0.16, 12);
    expect(found.sd).toBeCloseTo(1.58035, 4);
    expect(found.parts).toEqual([
      { sensor: 1, share: 0.5 },
      { sensor: 2, share: 0.5 },
    ]);
  });
  it('is the sensor’s own value at its height', () => {
    const found = cableAt(CABLE, 3)!;
    expect(found.value).toBeCloseTo(0.18, 12);
    // Only the slope over half a foot and the reading: sqrt(0.09 + 0.01).
    expect(found.sd).toBeCloseTo(0.3162, 4);
    expect(found.parts).toEqual([{ sensor: 2, share: 1 }]);
  });
  it('is the end sensor’s beyond it, less sure with the distance', () => {
    const [near, far] = [cableAt(CABLE, 3.2)!, cableAt(CABLE, 3.9)!];
    expect(near.value).toBeCloseTo(0.18, 12);
    expect(far.value).toBeCloseTo(0.18, 12);
    expect(far.sd).toBeGreaterThan(near.sd);
  });
  it('is nothing where no sensor lies within a metre', () => {
    expect(cableAt(CABLE, 4.2)).toBeNull();
    expect(cableAt([at(1, 0.14, 1), at(4, 0.18, 2)], 2.5)).toBeNull();
    expect(cableAt([], 1)).toBeNull();
  });
});
