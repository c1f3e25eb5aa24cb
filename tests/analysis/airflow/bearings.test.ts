import { describe, expect, it } from 'vitest';
import { powerBearing, pressureBearing } from '../../../src/analysis/airflow/bearings.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { inventedBin } from '../fronts/invented-bin.ts';

const bin = inventedBin([1], 1, 'up', 6);

describe('the static pressure beside an airflow', () => {
  it('speaks for its own airflow, on either side as far as that side is open', () => {
    const [{ at }] = pressureBearing(bin, estimate(5, 4, 6));
    expect(at(5)).toBe(1);
    // 1.6449 standard errors to the end of a 90 % interval: e^(-1.6449^2 / 2) = 0.2585
    expect(at(4)).toBeCloseTo(0.2585, 3);
    expect(at(6)).toBeCloseTo(0.2585, 3);
  });
  it('says nothing where there is none, or where only part of the floor lets air through', () => {
    expect(pressureBearing(bin, withheld('No.'))).toEqual([]);
    expect(pressureBearing({ openFloor: 0.4 }, estimate(5, 4, 6))).toEqual([]);
  });
});

describe('the fans’ power beside an airflow', () => {
  // 100 h at 10 kW: 8.8 kW on the shaft. At 1000 Pa, 65 % of that is 5.72 m3/s.
  const fan = { energyKwh: 1000, onHours: 100, energyRelSd: 0.01 };
  const pressure = { pressurePa: 1000 };

  it('speaks against more air than 65 % of the shaft’s power drives at the logged pressure, not against less', () => {
    const [{ at }] = powerBearing(bin, [fan], 6, pressure);
    expect(at(5.72)).toBeCloseTo(0.5, 6);
    // sd of the logarithm: hypot(0.1, 0.01, 0.04) = 0.1082; e^0.1082 more is one of them: 15.87 % (tables)
    expect(at(5.72 * Math.exp(0.1082))).toBeCloseTo(0.1587, 3);
    expect(at(5.72 * 1.5)).toBeLessThan(0.001);
    expect(at(3)).toBeGreaterThan(0.999);
    expect(at(0.5)).toBeGreaterThan(0.999);
  });
  it('counts all fans of the set', () => {
    const [{ at }] = powerBearing(bin, [fan, fan], 6, pressure);
    expect(at(2 * 5.72)).toBeCloseTo(0.5, 6);
  });
  it('without a logged pressure goes by the resistance of the grain', () => {
    // Corn by ASAE D272.3 at 0.05 m3/(s m2), over 78.5 m2: 20700 x 0.05^2 / ln(1 + 30.4 x 0.05) = 56.0 Pa/m; x 6 m x 1.5 = 504 Pa
    const flowM3S = 0.05 * (Math.PI / 4) * bin.diameterM ** 2;
    const kw = (flowM3S * 504) / 0.65 / 0.88 / 1000;
    const [{ at }] = powerBearing(bin, [{ ...fan, energyKwh: 100 * kw }], 6, null);
    expect(at(flowM3S)).toBeCloseTo(0.5, 2);
    expect(at(1.3 * flowM3S)).toBeLessThan(0.001);
  });
  it('says nothing of fans whose power is not known', () => {
    expect(powerBearing(bin, [], 6, pressure)).toEqual([]);
    expect(powerBearing(bin, [{ energyKwh: 0, onHours: 0, energyRelSd: 0 }], 6, pressure)).toEqual([]);
  });
});
