// For each formula: states in which its functions are called, told by the symbols of its equations. The equations are
// then evaluated in them by an independent parser, so that what the page prints is what the code works out.

import { stationFromAltimeterPa } from '../../../src/air/altimeter.ts';
import { dewPointOfRatioC } from '../../../src/air/dew-point.ts';
import { enthalpyJKg, tempOfEnthalpyC } from '../../../src/air/enthalpy.ts';
import { dewPointC, relativeHumidity } from '../../../src/air/humidity.ts';
import {
  humidityRatio,
  humidityRatioOfVapour,
  relativeHumidityOfRatio,
  vapourPressurePa,
} from '../../../src/air/humidity-ratio.ts';
import { mixAir } from '../../../src/air/mix-air.ts';
import { standardPressurePa, stationPressurePa } from '../../../src/air/pressure.ts';
import { saturationLogSlope, saturationPressureOverIcePa, saturationPressurePa } from '../../../src/air/saturation.ts';
import { airDensityKgM3, specificVolumeM3Kg } from '../../../src/air/volume.ts';
import { relativeHumidityWarmed, warmingK } from '../../../src/air/warm-air.ts';
import { humidityRatioOfWetBulb, wetBulbC } from '../../../src/air/wet-bulb.ts';
import { bedPressurePa, resistancePaM } from '../../../src/bin/airflow-resistance.ts';
import { airPowerW, fanWarmingByPressureK, fanWarmingK, hpPerThousandBushels } from '../../../src/bin/fan-power.ts';
import { grainVolumeM3, levelledDepthM, peakHeightOfReposeM } from '../../../src/bin/grain-volume.ts';
import { resistanceCurveOf } from '../../../src/bin/resistance-curves.ts';
import { finesFactor } from '../../../src/bin/resistance-factors.ts';
import { cfmPerBushel, velocityOfCfmPerBushel } from '../../../src/bin/specific-airflow.ts';
import { velocityOfPressureMS } from '../../../src/bin/velocity-of-pressure.ts';
import { bulkPorosity, dryMatterKg, KERNEL_DENSITY_KG_M3, standardBulkDensityKgM3 } from '../../../src/grain/bulk.ts';
import { BULK_DENSITY_LINES, bulkDensityKgM3 } from '../../../src/grain/bulk-density.ts';
import { bulkConductivityWMK, CONDUCTIVITY_LINES } from '../../../src/grain/conductivity.ts';
import {
  cornDamageMultiplier,
  cornDryMatterLoss,
  cornMoistureMultiplier,
  cornReferenceHoursPerHour,
  cornTemperatureMultiplier,
} from '../../../src/grain/corn-loss.ts';
import { cornReferenceHours, cornStorageHours } from '../../../src/grain/corn-storage.ts';
import { cropOf } from '../../../src/grain/crops.ts';
import { equilibriumHumidity, equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import { canolaStorageHours, wheatStorageHours } from '../../../src/grain/germination-storage.ts';
import { heatOfVaporisationFreeJKg, heatOfVaporisationJKg } from '../../../src/grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { isothermLogHumiditySlope } from '../../../src/grain/isotherm-equations.ts';
import { moistureDbFromWb, moistureWbFromDb } from '../../../src/grain/moisture-basis.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../../src/grain/specific-heat.ts';
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

import { layerSamples } from './layer-samples.ts';

/** Values of symbols, with the functions' results among them. */
export type Sample = Readonly<Record<string, number | ((x: number) => number)>>;

const P = 98_000;
const corn = resistanceCurveOf('corn');
const W_SATURATED = humidityRatioOfVapour(saturationPressurePa(12), P);
const ICE_SATURATED = humidityRatioOfVapour(saturationPressureOverIcePa(-6), P);

/** Both ways of an isotherm at a state inside its data. */
function isothermSamples(crop: string, name: string): Sample[] {
  const isotherm = isothermOf(crop, name);
  return [5, 30].flatMap((T) =>
    [0.4, 0.8].map((rh) => {
      const wb = equilibriumMoistureWb(isotherm, T, rh);
      const { a, b, c } = isotherm;
      return { A: a, B: b, C: c, T, RH: equilibriumHumidity(isotherm, T, wb), M: 100 * moistureDbFromWb(wb) };
    }),
  );
}

function cornState(tempF: number, wb: number) {
  const t = (tempF - 32) / 1.8;
  const form = tempF <= 60 ? ('low-temperature' as const) : ('carried-down' as const);
  return {
    theta: cornReferenceHours(0.005),
    k_M: cornMoistureMultiplier(wb),
    k_T: cornTemperatureMultiplier(t, wb, form),
    k_D: cornDamageMultiplier(0.2),
    H: cornStorageHours(t, wb, { form, damageFraction: 0.2 }),
    r: cornReferenceHoursPerHour(t, wb, form),
  };
}

const shape = { diameterM: 11, wallDepthM: 6, peakHeightM: 1.2, peakRadiusM: 5, hopperHeightM: 2 };
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

/** By the formula's id; every formula with equations is here. */
export const SAMPLES: Readonly<Record<string, () => readonly Sample[]>> = {
  'saturation-over-water': () =>
    [-20, 35].map((t) => ({ t, K: t + 273.15, p_ws: saturationPressurePa(t), s: saturationLogSlope(t) })),
  'saturation-over-ice': () => [{ t: -12, K: 261.15, p_ws: saturationPressureOverIcePa(-12) }],
  'dew-point': () => [
    { p_ws: saturationPressurePa, t: 21, t_d: 9, rh: relativeHumidity(21, 9) },
    { p_ws: saturationPressurePa, t: 21, t_d: dewPointC(21, 0.44), rh: 0.44 },
    {
      p_ws: saturationPressurePa,
      t: 21,
      t_d: dewPointOfRatioC(0.008, P),
      rh: relativeHumidityOfRatio(21, 0.008, P),
    },
  ],
  'humidity-ratio': () => [
    {
      p: P,
      t: 21,
      rh: 0.6,
      p_ws: saturationPressurePa,
      p_w: vapourPressurePa(humidityRatio(21, 0.6, P), P),
      W: humidityRatio(21, 0.6, P),
    },
    {
      p: P,
      t: 21,
      p_ws: saturationPressurePa,
      W: humidityRatioOfVapour(1200, P),
      p_w: 1200,
      rh: relativeHumidityOfRatio(21, humidityRatioOfVapour(1200, P), P),
    },
  ],
  enthalpy: () => [
    { t: 17, W: 0.009, h: enthalpyJKg(17, 0.009) },
    { t: tempOfEnthalpyC(42_000, 0.009), W: 0.009, h: 42_000 },
  ],
  'wet-bulb-water': () => [
    { t: 20, t_w: 12, W_s: W_SATURATED, W: humidityRatioOfWetBulb(20, 12, P) },
    {
      t: 20,
      t_w: wetBulbC(20, humidityRatioOfWetBulb(20, 12, P), P),
      W_s: W_SATURATED,
      W: humidityRatioOfWetBulb(20, 12, P),
    },
  ],
  'wet-bulb-ice': () => [{ t: -3, t_w: -6, W_s: ICE_SATURATED, W: humidityRatioOfWetBulb(-3, -6, P, 'ice') }],
  'specific-volume': () => [
    { t: 8, W: 0.005, p: P, v: specificVolumeM3Kg(8, 0.005, P), rho: airDensityKgM3(8, 0.005, P) },
  ],
  'standard-pressure': () => [{ z: 320, p: standardPressurePa(320) }],
  'station-pressure': () => [{ p_0: 101_800, z: 320, t: -8, p: stationPressurePa(101_800, 320, -8) }],
  altimeter: () => [{ p_a: 101_800, z: 320, p: stationFromAltimeterPa(101_800, 320) }],
  warming: () => [
    {
      p_ws: saturationPressurePa,
      rh: 0.8,
      t: 10,
      rh_2: relativeHumidityWarmed(10, 0.8, warmingK(9000, 3, 0.006)),
      q: 9000,
      m_a: 3,
      W: 0.006,
      dt: warmingK(9000, 3, 0.006),
    },
  ],
  mixing: () => {
    const one = { tempC: 5, humidityRatio: 0.004 };
    const other = { tempC: 25, humidityRatio: 0.011 };
    const mixed = mixAir(one, 1, other, 3);
    return [
      {
        s: 0.25,
        W_1: 0.004,
        W_2: 0.011,
        W: mixed.humidityRatio,
        h_1: enthalpyJKg(5, 0.004),
        h_2: enthalpyJKg(25, 0.011),
        h: enthalpyJKg(mixed.tempC, mixed.humidityRatio),
      },
    ];
  },
  'modified-henderson': () => isothermSamples('corn', 'modified Henderson D245.5'),
  'modified-chung-pfost': () => isothermSamples('wheat', 'modified Chung-Pfost D245.5'),
  'modified-halsey': () => isothermSamples('soybean', 'modified Halsey D245.5'),
  'modified-oswin': () => isothermSamples('durum', 'modified Oswin D245.5'),
  'moisture-basis': () => [
    { M_w: 0.16, M_d: moistureDbFromWb(0.16) },
    { M_w: moistureWbFromDb(0.2), M_d: 0.2 },
  ],
  'heat-of-vaporisation': () =>
    ['modified Henderson D245.5', 'modified Chung-Pfost D245.5', 'modified Oswin D245.5'].map((name) => {
      const isotherm = isothermOf('corn', name);
      const { equation, a, b, c } = isotherm;
      return {
        t: 15,
        h_f: heatOfVaporisationFreeJKg(15),
        h: heatOfVaporisationJKg(isotherm, 15, 0.15),
        s: isothermLogHumiditySlope(equation, a, b, c, 15, 0.15 / 0.85),
      };
    }),
  'bulk-density': () => [{ w: cropOf('corn').legalBushelKg, rho: standardBulkDensityKgM3('corn') }],
  'bulk-density-by-moisture': () => {
    const { baseKgM3, slopeKgM3Pct } = BULK_DENSITY_LINES[0];
    return [{ a: baseKgM3, b: slopeKgM3Pct, M: 15, rho: bulkDensityKgM3('rice', 0.15) }];
  },
  porosity: () => [{ rho: 700, rho_k: KERNEL_DENSITY_KG_M3.corn, e: bulkPorosity('corn', 700) }],
  'dry-matter': () => [{ V: 40, rho: 720, M_w: 0.15, D: dryMatterKg(40, 720, 0.15) }],
  'specific-heat': () => {
    const { baseJKgK, slopeJKgKPct } = specificHeatLineOf('corn');
    return [{ a: baseJKgK, b: slopeJKgKPct, M: 15, c: specificHeatJKgK(specificHeatLineOf('corn'), 0.15) }];
  },
  conductivity: () => [
    { a: CONDUCTIVITY_LINES.corn[0], b: CONDUCTIVITY_LINES.corn[1], M: 15, k: bulkConductivityWMK('corn', 0.15) },
  ],
  'corn-loss': () => [
    { theta: 200, L: cornDryMatterLoss(200) },
    { theta: cornReferenceHours(0.005), L: 0.005 },
  ],
  'corn-moisture': () => [{ m: (100 * 0.2) / 0.8, k_M: cornMoistureMultiplier(0.2) }],
  'corn-cold': () => [{ F: 40, k_T: cornTemperatureMultiplier((40 - 32) / 1.8, 0.2, 'low-temperature') }],
  'corn-carried-down': () => [
    { F: 40, w: 0, k_T: cornTemperatureMultiplier((40 - 32) / 1.8, 0.24, 'carried-down') },
    { F: 80, w: 0.05, k_T: cornTemperatureMultiplier((80 - 32) / 1.8, 0.24, 'carried-down') },
  ],
  'corn-damage': () => [{ d: 0.15, k_D: cornDamageMultiplier(0.15) }],
  'corn-storage': () => [cornState(40, 0.2), cornState(75, 0.22)],
  'wheat-storage': () => [{ m: 16, t: 12, H: wheatStorageHours(12, 0.16) }],
  'wheat-storage-damp': () => [{ m: 21, t: 12, H: wheatStorageHours(12, 0.21) }],
  'canola-storage': () => [{ m: 9, t: 12, H: canolaStorageHours(12, 0.09) }],
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
  ...layerSamples,
};
