import { describe, expect, it } from 'vitest';
import { statedWarming } from '../../../src/analysis/fronts/fan-warming.ts';
import { fanWarmingByPressureK } from '../../../src/bin/fan-power.ts';

const INCH_PA = 249.08891;

describe('warming of the air where no plenum reading tells it', () => {
  it('is the first law’s at the pressures it stands for, with fan and motor 40 to 55 % efficient', () => {
    // All losses of shaft and motor go into the air, dT = P / (eta rho c). Efficiencies: common practice for axial bin fans.
    const [coolLow, coolHigh] = statedWarming('cool').rangeK;
    const [dryLow, dryHigh] = statedWarming('dry').rangeK;
    for (const [inches, statedK] of [
      [1, coolLow],
      [3, coolHigh],
      [4, dryLow],
      [6, dryHigh],
    ]) {
      expect(statedK, `${inches} in.`).toBeGreaterThan(fanWarmingByPressureK(inches * INCH_PA, 0.55, 1.2));
      expect(statedK, `${inches} in.`).toBeLessThan(fanWarmingByPressureK(inches * INCH_PA, 0.4, 1.2));
    }
  });

  it('is the same for goals that move as much air, and its usual value lies in its range', () => {
    expect(statedWarming('hold')).toEqual(statedWarming('cool'));
    expect(statedWarming('condition')).toEqual(statedWarming('dry'));
    for (const goal of ['dry', 'cool'] as const) {
      const { usualK, rangeK, offK } = statedWarming(goal);
      expect(usualK).toBeGreaterThan(rangeK[0]);
      expect(usualK).toBeLessThan(rangeK[1]);
      expect(usualK - offK).toBeGreaterThan(0);
    }
  });
});
