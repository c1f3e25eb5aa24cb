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
import type { Samples } from './sample.ts';

const P = 98_000;
const W_SATURATED = humidityRatioOfVapour(saturationPressurePa(12), P);
const ICE_SATURATED = humidityRatioOfVapour(saturationPressureOverIcePa(-6), P);

export const AIR_SAMPLES: Samples = {
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
};
