// For each formula: states in which its functions are called, told by the symbols of its equations. The equations are
// then evaluated in them by an independent parser, so that what the page prints is what the code works out.

import { commercialDrying } from '../../../src/money/commercial-drying.ts';
import { energyCost } from '../../../src/money/energy-cost.ts';
import { flatShrink, flatShrinkExcess } from '../../../src/money/flat-shrink.ts';
import { waterAndHandlingShrink } from '../../../src/money/handling-shrink.ts';
import { highTemperatureDrying } from '../../../src/money/high-temperature-drying.ts';
import { loadSettlement } from '../../../src/money/load-settlement.ts';
import { minimumTopUp } from '../../../src/money/minimum-top-up.ts';
import { overdryingFraction, overdryingWeight } from '../../../src/money/overdrying-weight.ts';
import { perWaterKg, waterRemovedKg } from '../../../src/money/per-water.ts';
import { waterShrink, waterShrinkPerPoint } from '../../../src/money/water-shrink.ts';
import type { Samples } from './sample.ts';

const runs = {
  startMs: Float64Array.of(0, 7.2e6),
  endMs: Float64Array.of(3.6e6, 14.4e6),
  powerW: Float64Array.of(9000, 11_000),
};
const settled = loadSettlement(
  1000,
  0.19,
  4.2,
  [
    {
      baseWb: 0.15,
      perPoints: 1,
      stepPoints: null,
      bands: [{ toWb: 0.3, rate: 0.03 }],
      banding: 'cumulative',
      unit: 'money',
      bushels: 'wet',
      rejectOverWb: null,
    },
  ],
  0.05,
);

export const MONEY_SAMPLES: Samples = {
  'energy-cost': () => {
    const billed = energyCost(runs, { startMs: Float64Array.of(0, 5e6), pricePerKwh: Float64Array.of(0.1, 0.2) });
    return [{ P_1: 9, h_1: 1, c_1: 0.1, P_2: 11, h_2: 2, c_2: 0.2, E: billed.kwh, C: billed.cost }];
  },
  connected: () => [
    { m: 60, s: 41, x: minimumTopUp(60, 41) },
    { m: 60, s: 75, x: minimumTopUp(60, 75) },
  ],
  'water-shrink': () => [{ M_1: 0.2, M_2: 0.15, S: waterShrink(0.2, 0.15), S_p: waterShrinkPerPoint(0.15) }],
  'handling-shrink': () => [{ M_1: 0.2, M_2: 0.15, x: 0.005, S_h: waterAndHandlingShrink(0.2, 0.15, 0.005) }],
  'flat-shrink': () => [
    {
      M: 0.2,
      M_b: 0.15,
      k: 0.014,
      c: 4.5,
      S_f: flatShrink(0.2, 0.15, 0.014),
      X: flatShrinkExcess(0.2, 0.15, 0.014, 4.5),
    },
  ],
  schedule: () => [
    {
      wet: 1000,
      S: settled?.shrink ?? Number.NaN,
      paid: settled?.paidBushels ?? Number.NaN,
      c: 4.2,
      gross: settled?.gross ?? Number.NaN,
      charge: settled?.charges[0] ?? Number.NaN,
      net: settled?.net ?? Number.NaN,
    },
  ],
  overdrying: () => [
    { D: 10_000, M_b: 0.15, M_e: 0.13, O: overdryingWeight(10_000, 0.15, 0.13), o: overdryingFraction(0.15, 0.13) },
    { D: 10_000, M_b: 0.15, M_e: 0.17, O: overdryingWeight(10_000, 0.15, 0.17), o: overdryingFraction(0.15, 0.17) },
  ],
  'high-temperature-drying': () => [
    {
      B: 500,
      n: 6,
      u: 0.018,
      c_u: 1.8,
      e: 0.01,
      c_e: 0.12,
      x: 0.04,
      C: highTemperatureDrying(500, 6, {
        fuelPerBushelPoint: 0.018,
        fuelPrice: 1.8,
        kwhPerBushelPoint: 0.01,
        pricePerKwh: 0.12,
        otherPerBushel: 0.04,
      }).cost,
    },
  ],
  'commercial-drying': () => [{ B: 500, n: 6, c: 0.05, C: commercialDrying(500, 6, 0.05) }],
  'per-water': () => [
    {
      m: 1000,
      M_1: 0.2,
      M_2: 0.15,
      w: waterRemovedKg(1000, 0.2, 0.15),
      Y: 12,
      y: perWaterKg(12, waterRemovedKg(1000, 0.2, 0.15)),
    },
  ],
};
