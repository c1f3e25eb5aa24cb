import type { Formula, FormulaSource } from '../base/formula.ts';
import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK, VAPORISATION_0C_J_KG } from './enthalpy.ts';

const ashrae = (place: string): FormulaSource => ({ key: 'ashrae-2017', place: `ch. 1, ${place}` });

/** The equations of moist air. */
export const AIR_FORMULAS: readonly Formula[] = [
  {
    id: 'saturation-over-water',
    title: 'Saturation pressure over water',
    functions: ['saturationPressurePa', 'saturationLogSlope'],
    equations: [
      'p_ws = exp(-5800.2206 / K + 1.3914993 - 0.048640239 * K + 4.1764768e-5 * K^2 - 1.4452093e-8 * K^3 + 6.5459673 * ln(K))',
      'K = t + 273.15',
      's = 5800.2206 / K^2 - 0.048640239 + 8.3529536e-5 * K - 4.3356279e-8 * K^2 + 6.5459673 / K',
    ],
    rule: 'p_ws in Pa, t in °C, −80 to 200; s is the slope of ln p_ws, per K. Also below freezing, over supercooled water: humidity sensors and weather services state humidity over water in frost too.',
    sources: [ashrae('eq. 6')],
  },
  {
    id: 'saturation-over-ice',
    title: 'Saturation pressure over ice',
    functions: ['saturationPressureOverIcePa'],
    equations: [
      'p_ws = exp(-5674.5359 / K + 6.3925247 - 0.009677843 * K + 6.2215701e-7 * K^2 + 2.0747825e-9 * K^3 - 9.484024e-13 * K^4 + 4.1635019 * ln(K))',
      'K = t + 273.15',
    ],
    rule: 'p_ws in Pa, t in °C, −100 to 0.01. Taken only where a humidity is stated over ice.',
    sources: [ashrae('eq. 5')],
  },
  {
    id: 'dew-point',
    title: 'Relative humidity and dew point',
    functions: ['relativeHumidity', 'dewPointC', 'dewPointOfRatioC'],
    equations: ['rh = p_ws(t_d) / p_ws(t)'],
    rule: 'rh as a fraction, t and the dew point t_d in °C, over water. The dew point is found by halving.',
    sources: [ashrae('eq. 12 and 36')],
  },
  {
    id: 'humidity-ratio',
    title: 'Humidity ratio',
    functions: ['humidityRatioOfVapour', 'vapourPressurePa', 'humidityRatio', 'relativeHumidityOfRatio'],
    equations: ['W = 0.621945 * p_w / (p - p_w)', 'p_w = p * W / (0.621945 + W)', 'p_w = rh * p_ws(t)'],
    rule: 'W in kg of water per kg of dry air, vapour pressure p_w and total pressure p in Pa. Ideal gas: tables of the real gas lie 0.4 to 0.6 % higher.',
    sources: [ashrae('eq. 12 and 20')],
  },
  {
    id: 'enthalpy',
    title: 'Enthalpy of moist air',
    functions: ['enthalpyJKg', 'tempOfEnthalpyC'],
    equations: [`h = ${HEAT_DRY_AIR_J_KGK} * t + W * (${VAPORISATION_0C_J_KG} + ${HEAT_VAPOUR_J_KGK} * t)`],
    rule: 'h in J per kg of dry air, counted from dry air and liquid water at 0 °C; t in °C.',
    sources: [ashrae('eq. 30')],
  },
  {
    id: 'wet-bulb-water',
    title: 'Wet bulb, water on the bulb',
    functions: ['humidityRatioOfWetBulb', 'wetBulbC'],
    equations: [
      `W = ((${VAPORISATION_0C_J_KG} - 2326 * t_w) * W_s - ${HEAT_DRY_AIR_J_KGK} * (t - t_w)) / (${VAPORISATION_0C_J_KG} + ${HEAT_VAPOUR_J_KGK} * t - 4186 * t_w)`,
    ],
    rule: 't and the wet bulb t_w in °C; W_s is the humidity ratio of air saturated at t_w. The wet bulb is found by halving.',
    sources: [ashrae('eq. 33')],
  },
  {
    id: 'wet-bulb-ice',
    title: 'Wet bulb, ice on the bulb',
    functions: ['humidityRatioOfWetBulb', 'wetBulbC'],
    equations: [
      `W = ((2830000 - 240 * t_w) * W_s - ${HEAT_DRY_AIR_J_KGK} * (t - t_w)) / (2830000 + ${HEAT_VAPOUR_J_KGK} * t - 2100 * t_w)`,
    ],
    rule: 'As above with W_s over ice. Ice is never assumed: in light frost a bulb may carry either.',
    sources: [ashrae('eq. 35')],
  },
  {
    id: 'specific-volume',
    title: 'Specific volume and density',
    functions: ['specificVolumeM3Kg', 'airDensityKgM3'],
    equations: ['v = 287.042 * (t + 273.15) * (1 + 1.607858 * W) / p', 'rho = (1 + W) / v'],
    rule: 'v in m³ per kg of dry air, density rho in kg/m³, p in Pa.',
    sources: [ashrae('eq. 11 and 26')],
  },
  {
    id: 'standard-pressure',
    title: 'Pressure at an elevation',
    functions: ['standardPressurePa'],
    equations: ['p = 101325 * (1 - 2.25577e-5 * z)^5.2559'],
    rule: 'p in Pa, z in m above the sea, −5,000 to 11,000: the standard atmosphere.',
    sources: [ashrae('eq. 3')],
  },
  {
    id: 'station-pressure',
    title: 'Station pressure from sea-level pressure',
    functions: ['stationPressurePa'],
    equations: ['p = p_0 * exp(-9.80665 * z / (287.042 * (t + 273.15 + 0.0065 * z / 2)))'],
    rule: 'p and the pressure at sea level p_0 in Pa, z in m, t in °C at the station. Where t is missing, the ratio of the standard atmosphere (within 1.3 % up to 500 m).',
    sources: [{ key: 'wmo-8', place: 'vol. I, ch. 3' }],
  },
  {
    id: 'altimeter',
    title: 'Station pressure from an altimeter setting',
    functions: ['stationFromAltimeterPa'],
    equations: ['p = 100 * ((p_a / 100)^0.190263 - 8.417286e-5 * z)^(1 / 0.190263)'],
    rule: 'p and the setting p_a in Pa, z in m.',
    sources: [{ key: 'smithsonian-1951', place: 'altimeter setting' }],
  },
  {
    id: 'warming',
    title: 'Warming air at constant humidity ratio',
    functions: ['relativeHumidityWarmed', 'warmingK'],
    equations: [
      'rh_2 = rh * p_ws(t) / p_ws(t + dt)',
      `dt = q / (m_a * (${HEAT_DRY_AIR_J_KGK} + W * ${HEAT_VAPOUR_J_KGK}))`,
    ],
    rule: 'Heat q in W into a stream of m_a kg of dry air a second warms it by dt kelvin and takes its humidity from rh to rh_2.',
    sources: [ashrae('eq. 12 and 30')],
  },
  {
    id: 'mixing',
    title: 'Mixing two streams of air',
    functions: ['mixAir'],
    equations: ['W = s * W_1 + (1 - s) * W_2', 'h = s * h_1 + (1 - s) * h_2'],
    rule: 's is the share of the first stream in the dry air; water and enthalpy keep. The temperature follows from h and W.',
    sources: [ashrae('adiabatic mixing')],
  },
];
