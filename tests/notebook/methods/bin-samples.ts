// For each formula: states in which its functions are called, told by the symbols of its equations. The equations are
// then evaluated in them by an independent parser, so that what the page prints is what the code works out.

import { bedPressurePa, resistancePaM } from '../../../src/bin/airflow-resistance.ts';
import { airPowerW, fanWarmingByPressureK, fanWarmingK, hpPerThousandBushels } from '../../../src/bin/fan-power.ts';
import { grainVolumeM3, levelledDepthM, peakHeightOfReposeM } from '../../../src/bin/grain-volume.ts';
import { resistanceCurveOf } from '../../../src/bin/resistance-curves.ts';
import { finesFactor } from '../../../src/bin/resistance-factors.ts';
import { cfmPerBushel, velocityOfCfmPerBushel } from '../../../src/bin/specific-airflow.ts';
import { velocityOfPressureMS } from '../../../src/bin/velocity-of-pressure.ts';
import type { Samples } from './sample.ts';

const corn = resistanceCurveOf('corn');
const shape = { diameterM: 11, wallDepthM: 6, peakHeightM: 1.2, peakRadiusM: 5, hopperHeightM: 2 };

export const BIN_SAMPLES: Samples = {
  'airflow-resistance': () => {
    const { a, b } = corn;
    const u = velocityOfPressureMS(corn, 600, 6, 1.5);
    return [
      { a, b, u: 0.1, f: 1.5, z: 6, g: resistancePaM(a, b, 0.1), P: bedPressurePa(corn, 0.1, 6, 1.5) },
      { a, b, u, f: 1.5, z: 6, g: resistancePaM(a, b, u), P: 600 },
    ];
  },
  fines: () => [{ u: 0.1, x: 0.03, f: finesFactor(0.03, 0.1) }],
  'specific-airflow': () => [
    { u: 0.1, z: 6, q: cfmPerBushel(0.1 * 50, 6 * 50) },
    { u: velocityOfCfmPerBushel(1, 6), z: 6, q: 1 },
  ],
  'fan-power': () => [
    { P: 700, Q: 5, N: airPowerW(700, 5), N_s: 7000, B: 12_000, n: hpPerThousandBushels(7000, 12_000) },
  ],
  'fan-warming': () => [
    { N: 7000, Q: 5, rho: 1.2, c: 1006, dt: fanWarmingK(7000, 5, 1.2), P: 700, eta: 0.5 },
    { N: 7000, Q: 5, rho: 1.2, c: 1006, dt: fanWarmingByPressureK(700, 0.5, 1.2), P: 700, eta: 0.5 },
  ],
  'grain-volume': () => [
    {
      r: 5.5,
      z: 6,
      r_c: 5,
      y: 1.2,
      y_h: 2,
      V: grainVolumeM3(shape),
      z_l: levelledDepthM(shape),
      y_r: peakHeightOfReposeM(11, 25),
      alpha: (25 * Math.PI) / 180,
    },
  ],
};
