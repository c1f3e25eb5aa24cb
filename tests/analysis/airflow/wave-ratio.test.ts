import { describe, expect, it } from 'vitest';
import {
  constantsSpread,
  grainHeatJKgK,
  grainIsotherm,
  waveRatioAt,
  waveRatios,
} from '../../../src/analysis/airflow/wave-ratio.ts';
import { frontRatios } from '../../../src/bin/front-speed.ts';
import { CROPS } from '../../../src/grain/crops.ts';
import { ISOTHERM_CROPS } from '../../../src/grain/isotherm.ts';

const PRESSURE_PA = 98000;

describe('how fast a temperature moves up', () => {
  it('is the ratio of a front of that temperature', () => {
    const isotherm = grainIsotherm('corn', null);
    const heatJKgK = grainHeatJKgK('corn', 0.16);
    const ratioAt = waveRatioAt(isotherm, heatJKgK, 0.16, PRESSURE_PA);
    // a front of two tenths of a kelvin: its lead, where the grain is still at 12 degC
    const front = frontRatios({
      isotherm,
      heatJKgK,
      moistureWb: 0.16,
      aheadC: 12,
      behindC: 11.8,
      pressurePa: PRESSURE_PA,
    });
    // straight lines between half kelvins: a hundredth of a percent
    expect(Math.abs(ratioAt(12) / front.lead - 1)).toBeLessThan(2e-4);
    // evaporation carries more in warm grain; sensible heat alone would make it half as fast there
    expect(ratioAt(25)).toBeGreaterThan(1.4 * ratioAt(5));
    expect(ratioAt(20)).toBeGreaterThan((1.6 * 1006) / (heatJKgK / 0.84));
    expect(waveRatios(isotherm, 'corn', PRESSURE_PA)(0.16)(12)).toBe(ratioAt(12));
  });

  it('is told of every crop with an isotherm, in damp and in dry grain', () => {
    for (const crop of ISOTHERM_CROPS.filter((id) => CROPS.some((one) => one.id === id && one.isotherm !== null))) {
      for (const moistureWb of [0.07, 0.13, 0.28]) {
        const { low, high, answers } = constantsSpread(crop, moistureWb, 2, 20, PRESSURE_PA);
        expect(low, crop).toBeLessThanOrEqual(1);
        expect(high, crop).toBeGreaterThanOrEqual(1);
        expect(high / low, crop).toBeLessThan(2);
        expect(
          answers.reduce((sum, one) => sum + one.weight, 0),
          crop,
        ).toBeCloseTo(1, 12);
        expect(Math.min(...answers.map((one) => one.at)), crop).toBeCloseTo(Math.log(low), 12);
        expect(Math.max(...answers.map((one) => one.at)), crop).toBeCloseTo(Math.log(high), 12);
        expect(grainHeatJKgK(crop, moistureWb), crop).toBeGreaterThan(1200);
      }
    }
  });

  it('takes the first heat of soybeans two times in three; their second one holds a fifth more at 13 %', () => {
    const { answers, isotherms } = constantsSpread('soybean', 0.13, 2, 20, PRESSURE_PA);
    const share = (some: typeof answers) => some.reduce((sum, one) => sum + one.weight, 0);
    const mean = (some: typeof answers) => some.reduce((sum, one) => sum + one.weight * one.at, 0) / share(some);
    // Two heats, each by every published isotherm: as many answers for the one as for the other.
    const half = answers.length / 2;
    expect(answers.length).toBe(2 * isotherms.length);
    expect(share(answers.slice(0, half))).toBeCloseTo(2 / 3, 12);
    expect(share(answers.slice(half))).toBeCloseTo(1 / 3, 12);
    // ln(2.32 / 1.93) = 0.184 by the two lines (Alam and Shove 1973, memory; Deshpande and Bal 1999, seen) at 14.9 % dry basis
    expect(mean(answers.slice(half)) - mean(answers.slice(0, half))).toBeCloseTo(0.184, 1.5);
  });
});
