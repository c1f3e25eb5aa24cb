import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationFromAltimeterPa } from '../../src/air/altimeter.ts';
import { dewPointOfRatioC } from '../../src/air/dew-point.ts';
import { enthalpyJKg, tempOfEnthalpyC } from '../../src/air/enthalpy.ts';
import { dewPointC, relativeHumidity } from '../../src/air/humidity.ts';
import {
  humidityRatio,
  humidityRatioOfVapour,
  relativeHumidityOfRatio,
  vapourPressurePa,
} from '../../src/air/humidity-ratio.ts';
import { mixAir } from '../../src/air/mix-air.ts';
import { standardPressurePa, stationPressurePa } from '../../src/air/pressure.ts';
import { saturationLogSlope, saturationPressureOverIcePa, saturationPressurePa } from '../../src/air/saturation.ts';
import { airDensityKgM3, specificVolumeM3Kg } from '../../src/air/volume.ts';
import { relativeHumidityWarmed, warmingK } from '../../src/air/warm-air.ts';
import { humidityRatioOfWetBulb, wetBulbC } from '../../src/air/wet-bulb.ts';
import { velocityOfPowerMS } from '../../src/bin/airflow-of-power.ts';
import { airflowOfPressure } from '../../src/bin/airflow-of-pressure.ts';
import { airflowResistancePaM, bedPressurePa, resistancePaM } from '../../src/bin/airflow-resistance.ts';
import { bedWaveRatio, moisturePerKInWave } from '../../src/bin/bed-waves.ts';
import { fanFlowM3S } from '../../src/bin/fan-curve.ts';
import { airPowerW, fanWarmingByPressureK, fanWarmingK, hpPerThousandBushels } from '../../src/bin/fan-power.ts';
import { frontPlateauC } from '../../src/bin/front-plateau.ts';
import { frontRatios, frontSpeedMS, velocityOfFrontMS } from '../../src/bin/front-speed.ts';
import { grainVolumeM3, peakHeightOfReposeM } from '../../src/bin/grain-volume.ts';
import { resistanceCurveOf } from '../../src/bin/resistance-curves.ts';
import { finesFactor } from '../../src/bin/resistance-factors.ts';
import { cfmPerBushel, velocityOfCfmPerBushel } from '../../src/bin/specific-airflow.ts';
import { bedPressureRangePa, velocityOfPressureMS } from '../../src/bin/velocity-of-pressure.ts';
import { bulkPorosity, dryMatterKg } from '../../src/grain/bulk.ts';
import { bulkDensityKgM3 } from '../../src/grain/bulk-density.ts';
import { bulkConductivityWMK } from '../../src/grain/conductivity.ts';
import {
  cornDamageMultiplier,
  cornDryMatterLoss,
  cornMoistureMultiplier,
  cornReferenceHoursPerHour,
  cornTemperatureMultiplier,
} from '../../src/grain/corn-loss.ts';
import { cornReferenceHours, cornStorageHours } from '../../src/grain/corn-storage.ts';
import { equilibriumHumidity, equilibriumMoistureWb } from '../../src/grain/equilibrium.ts';
import { canolaStorageHours, wheatStorageHours } from '../../src/grain/germination-storage.ts';
import { grainHumidityRatio } from '../../src/grain/grain-air.ts';
import { heatOfVaporisationFreeJKg, heatOfVaporisationJKg } from '../../src/grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { equilibriumByIsotherm } from '../../src/grain/isotherm-spread.ts';
import { moistureDbFromWb, moistureWbFromDb } from '../../src/grain/moisture-basis.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../src/grain/specific-heat.ts';
import { specificHeatSpreadJKgK } from '../../src/grain/specific-heat-spread.ts';
import { STORAGE_RULES } from '../../src/grain/storage-rules.ts';

const corn = isothermOf('corn');
const curve = resistanceCurveOf('corn');
const FAN = [
  [0, 8],
  [1500, 2],
] as const;

type Case = readonly [name: string, call: (...numbers: number[]) => unknown, ...good: number[]];

/** Functions that check, each with numbers that it takes. */
const CHECKED: readonly Case[] = [
  ['saturationPressurePa', saturationPressurePa, 10],
  ['saturationPressureOverIcePa', saturationPressureOverIcePa, -10],
  ['humidityRatio', (t, rh, p) => humidityRatio(t, rh, p), 10, 0.6, 1e5],
  ['relativeHumidityOfRatio', (t, w, p) => relativeHumidityOfRatio(t, w, p), 10, 0.005, 1e5],
  ['relativeHumidity', relativeHumidity, 10, 5],
  ['dewPointC', dewPointC, 10, 0.6],
  ['dewPointOfRatioC', dewPointOfRatioC, 0.005, 1e5],
  ['wetBulbC', (t, w, p) => wetBulbC(t, w, p), 10, 0.005, 1e5],
  ['humidityRatioOfWetBulb', (t, wet, p) => humidityRatioOfWetBulb(t, wet, p), 10, 7, 1e5],
  ['relativeHumidityWarmed', relativeHumidityWarmed, 10, 0.6, 3],
  ['warmingK', warmingK, 1000, 2, 0.005],
  [
    'mixAir',
    (t1, w1, m1, t2, w2, m2) => mixAir({ tempC: t1, humidityRatio: w1 }, m1, { tempC: t2, humidityRatio: w2 }, m2),
    ...[10, 0.005, 1, 20, 0.008, 2],
  ],
  ['standardPressurePa', standardPressurePa, 300],
  ['stationPressurePa', (sea, z) => stationPressurePa(sea, z, 10), 101325, 300],
  ['equilibriumMoistureWb', (t, rh) => equilibriumMoistureWb(corn, t, rh), 10, 0.6],
  ['equilibriumHumidity', (t, m) => equilibriumHumidity(corn, t, m), 10, 0.15],
  ['heatOfVaporisationJKg', (t, m) => heatOfVaporisationJKg(corn, t, m), 10, 0.15],
  ['grainHumidityRatio', (t, m, p) => grainHumidityRatio(corn, t, m, p), 10, 0.15, 1e5],
  ['specificHeatJKgK', (m) => specificHeatJKgK(specificHeatLineOf('corn'), m), 0.15],
  ['specificHeatSpreadJKgK', specificHeatSpreadJKgK, 0.15],
  ['bulkConductivityWMK', (m) => bulkConductivityWMK('corn', m), 0.15],
  ['bulkPorosity', (rho) => bulkPorosity('corn', rho), 720],
  ['bulkDensityKgM3', (m) => bulkDensityKgM3('rice', m), 0.14],
  ['dryMatterKg', dryMatterKg, 100, 720, 0.15],
  ['moistureDbFromWb', moistureDbFromWb, 0.15],
  ['moistureWbFromDb', moistureWbFromDb, 0.18],
  ['cornStorageHours', (t, m) => cornStorageHours(t, m), 10, 0.18],
  ['cornReferenceHours', cornReferenceHours, 0.005],
  ['wheatStorageHours', wheatStorageHours, 10, 0.15],
  ['canolaStorageHours', canolaStorageHours, 10, 0.1],
  ...STORAGE_RULES.map((rule): Case => [`rule for ${rule.crop}, ${rule.name}`, rule.hours, 10, 0.14]),
  ['airflowResistancePaM', (v) => airflowResistancePaM(curve, v), 0.05],
  ['bedPressurePa', (v, z, f) => bedPressurePa(curve, v, z, f), 0.05, 5, 1.5],
  ['bedPressureRangePa', (z, f) => bedPressureRangePa(curve, z, f), 5, 1.5],
  ['velocityOfPressureMS', (p, z, f) => velocityOfPressureMS(curve, p, z, f), 400, 5, 1.5],
  ['airflowOfPressure', (p, z, f, a) => airflowOfPressure('corn', p, z, f, a), 400, 5, 1.5, 90],
  ['velocityOfPowerMS', (n, z, f, e) => velocityOfPowerMS(curve, n, z, f, e), 50, 5, 1.5, 0.55],
  ['finesFactor', finesFactor, 0.05, 0.1],
  ['cfmPerBushel', cfmPerBushel, 5, 500],
  ['velocityOfCfmPerBushel', velocityOfCfmPerBushel, 1, 5],
  ['fanFlowM3S', (p) => fanFlowM3S(FAN, p), 400],
  ['airPowerW', airPowerW, 400, 5],
  ['hpPerThousandBushels', hpPerThousandBushels, 7457, 10_000],
  ['fanWarmingK', (n, q, rho) => fanWarmingK(n, q, rho), 7457, 5, 1.2],
  ['fanWarmingK of damp air', fanWarmingK, 7457, 5, 1.2, 1020],
  ['fanWarmingByPressureK', (p, e, rho) => fanWarmingByPressureK(p, e, rho), 400, 0.5, 1.2],
  ['fanWarmingByPressureK of damp air', fanWarmingByPressureK, 400, 0.5, 1.2, 1020],
  ['peakHeightOfReposeM', peakHeightOfReposeM, 11, 25],
  ['frontPlateauC', (t, w, m, p) => frontPlateauC(corn, t, w, m, p), 10, 0.005, 0.15, 1e5],
  [
    'grainVolumeM3',
    (d, z, peak, hopper) => grainVolumeM3({ diameterM: d, wallDepthM: z, peakHeightM: peak, hopperHeightM: hopper }),
    11,
    6,
    1,
    2,
  ],
  ['equilibriumByIsotherm', (t, rh) => equilibriumByIsotherm('corn', t, rh).map((one) => one.moistureWb), 10, 0.6],
  [
    'frontRatios',
    (m, ahead, behind, p) =>
      frontRatios({ isotherm: corn, heatJKgK: 2000, moistureWb: m, aheadC: ahead, behindC: behind, pressurePa: p }),
    0.15,
    20,
    10,
    1e5,
  ],
  ['frontSpeedMS', frontSpeedMS, 1, 0.05, 0.8, 610],
  ['velocityOfFrontMS', velocityOfFrontMS, 1, 1e-4, 0.8, 610],
];

/** Kernels: no checks, so that what is no number must come out as none, never as one. */
const KERNELS: readonly Case[] = [
  ['saturationLogSlope', saturationLogSlope, 10],
  ['humidityRatioOfVapour', humidityRatioOfVapour, 1000, 1e5],
  ['vapourPressurePa', vapourPressurePa, 0.005, 1e5],
  ['enthalpyJKg', enthalpyJKg, 10, 0.005],
  ['tempOfEnthalpyC', tempOfEnthalpyC, 22_000, 0.005],
  ['specificVolumeM3Kg', specificVolumeM3Kg, 10, 0.005, 1e5],
  ['airDensityKgM3', airDensityKgM3, 10, 0.005, 1e5],
  ['heatOfVaporisationFreeJKg', heatOfVaporisationFreeJKg, 10],
  ['cornDryMatterLoss', cornDryMatterLoss, 230],
  ['cornMoistureMultiplier', cornMoistureMultiplier, 0.2],
  ['cornTemperatureMultiplier', (t, m) => cornTemperatureMultiplier(t, m, 'low-temperature'), 20, 0.2],
  ['cornDamageMultiplier', cornDamageMultiplier, 0.3],
  ['stationFromAltimeterPa', stationFromAltimeterPa, 101325, 300],
  ['cornReferenceHoursPerHour', (t, m) => cornReferenceHoursPerHour(t, m, 'low-temperature'), 10, 0.2],
  ['resistancePaM', resistancePaM, 20700, 30.4, 0.05],
];

/** The numbers with one of them replaced. */
const withOne = (good: readonly number[], at: number, value: number) => good.map((x, i) => (i === at ? value : x));

describe('functions of air, grain and bin', () => {
  for (const [name, call, ...good] of CHECKED) {
    it(`${name} takes its numbers, and refuses NaN and numbers far outside, each with the range`, () => {
      expect(() => call(...good)).not.toThrow();
      good.forEach((_, at) => {
        for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e12, -1e12]) {
          expect(() => call(...withOne(good, at, bad))).toThrow(/ is \S+; it must lie between \S+ and \S+\./);
        }
      });
    });
  }
  for (const [name, call, ...good] of KERNELS) {
    it(`${name} makes no number of what is none`, () => {
      expect(call(...good)).toSatisfy(Number.isFinite);
      good.forEach((_, at) => {
        expect(call(...withOne(good, at, Number.NaN))).toBeNaN();
      });
    });
  }
  it('bedWaveRatio and moisturePerKInWave make no number of what is none; the temperature is refused on the way', () => {
    for (const at of [1, 2, 3]) {
      const [t, m, heat, p] = withOne([10, 0.17, 2000, 1e5], at, Number.NaN);
      expect(bedWaveRatio('fast', corn, t, m, heat, p)).toBeNaN();
      expect(moisturePerKInWave(corn, t, m, heat, p)).toBeNaN();
    }
    expect(() => bedWaveRatio('slow', corn, Number.NaN, 0.17, 2000, 1e5)).toThrow(/tempC is NaN/);
  });
  it('give a number or an error for whatever is thrown at them, never NaN or infinity (seeded)', () => {
    const any = fc.oneof(
      fc.double({ min: -200, max: 200, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double(),
    );
    // A dew point below -80 degC is told as missing.
    const cases = CHECKED.filter(([name]) => name !== 'dewPointC');
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.array(any, { minLength: 4, maxLength: 4 }),
        ([, call, ...good], thrown) => {
          const given = good.map((x, i) => (Math.abs(thrown[i]) < 1e-3 ? x : thrown[i]));
          let out: unknown;
          try {
            out = call(...given);
          } catch (error) {
            return error instanceof RangeError;
          }
          const numbers = (Array.isArray(out) ? out : [out]).flatMap((one) =>
            typeof one === 'number'
              ? [one]
              : Object.values(one as object).filter((x): x is number => typeof x === 'number'),
          );
          return numbers.length > 0 && numbers.every(Number.isFinite);
        },
      ),
      { seed: 20241006, numRuns: 4000 },
    );
  });
});
