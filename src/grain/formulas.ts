import { BUSHEL_FT3 } from '../base/bushel.ts';
import type { Formula, FormulaSource } from '../base/formula.ts';
import { USUAL_LOSS } from './corn-storage.ts';
import { EQUILIBRIUM_RH_RANGE } from './equilibrium.ts';
import type { IsothermEquation } from './isotherm-equations.ts';

const ISOTHERM_FUNCTIONS = [
  'isothermHumidity',
  'isothermMoistureDb',
  'equilibriumHumidity',
  'equilibriumMoistureWb',
  'isothermHumidityPerMoisture',
] as const;
const [DRIEST, DAMPEST] = EQUILIBRIUM_RH_RANGE.map((rh) => 100 * rh);
const D245: readonly FormulaSource[] = [{ key: 'asae-d245-5', place: 'equations' }];

/** The formula of an isotherm's equation; its checks and constants point at it. */
export const ISOTHERM_FORMULA_IDS: Readonly<Record<IsothermEquation, string>> = {
  'modified Henderson': 'modified-henderson',
  'modified Chung-Pfost': 'modified-chung-pfost',
  'modified Halsey': 'modified-halsey',
  'modified Oswin': 'modified-oswin',
};

const isotherm = (equation: IsothermEquation, equations: readonly string[]): Formula => ({
  id: ISOTHERM_FORMULA_IDS[equation],
  title: `Equilibrium moisture: ${equation}`,
  functions: ISOTHERM_FUNCTIONS,
  equations,
  rule: `M in percent of the dry matter, T in °C, RH as a fraction; A, B, C by crop and edition, in the table of constants. Humidities are held at ${DRIEST} % below and at ${DAMPEST} % above, where the data end.`,
  sources: D245,
});

/** The equations of grain. */
export const GRAIN_FORMULAS: readonly Formula[] = [
  isotherm('modified Henderson', ['RH = 1 - exp(-A * (T + C) * M^B)', 'M = (-ln(1 - RH) / (A * (T + C)))^(1 / B)']),
  isotherm('modified Chung-Pfost', ['RH = exp(-A / (T + C) * exp(-B * M))', 'M = -ln(-(T + C) * ln(RH) / A) / B']),
  isotherm('modified Halsey', ['RH = exp(-exp(A + B * T) * M^(-C))', 'M = (exp(A + B * T) / -ln(RH))^(1 / C)']),
  isotherm('modified Oswin', ['RH = 1 / (((A + B * T) / M)^C + 1)', 'M = (A + B * T) * (RH / (1 - RH))^(1 / C)']),
  {
    id: 'other-isotherms',
    title: 'How far the choice of isotherm moves a moisture',
    functions: ['equilibriumByIsotherm', 'moistureByOtherIsothermWb'],
    equations: [],
    rule: 'A moisture goes back to the humidity that the cable measured by the one isotherm, and down again by the other.',
    sources: D245,
  },
  {
    id: 'grain-air',
    title: 'Air in balance with grain',
    functions: ['grainHumidityRatio', 'grainVapourPressurePa', 'grainRatioPerK', 'grainRatioPerMoisture'],
    equations: [],
    rule: 'The humidity ratio of air at the grain’s temperature whose relative humidity is the one that the isotherm gives for the grain’s moisture.',
    sources: [{ key: 'ashrae-2017', place: 'ch. 1, eq. 6, 12 and 20' }],
  },
  {
    id: 'moisture-basis',
    title: 'Wet and dry basis',
    functions: ['dryFromWet', 'wetFromDry', 'moistureDbFromWb', 'moistureWbFromDb'],
    equations: ['M_d = M_w / (1 - M_w)', 'M_w = M_d / (1 + M_d)'],
    rule: 'Fractions; M_w of the whole, M_d of the dry matter. By definition.',
    sources: [],
  },
  {
    id: 'heat-of-vaporisation',
    title: 'Heat that takes water out of grain',
    functions: ['heatOfVaporisationFreeJKg', 'heatOfVaporisationJKg', 'isothermLogHumiditySlope'],
    equations: ['h_f = 2501000 - 2364 * t', 'h = h_f + 461.5 * (t + 273.15)^2 * s'],
    rule: 'J per kg of water; h_f of free water (steam tables, 0 to 60 °C, from memory), h in the grain; s is the slope of ln RH over temperature at one moisture, per K, taken from the isotherm in use.',
    sources: [{ key: 'rodriguez-arias-1963', place: 'method' }],
  },
  {
    id: 'bulk-density',
    title: 'Bulk density of a legal bushel',
    functions: ['standardBulkDensityKgM3'],
    equations: [`rho = w / (${BUSHEL_FT3} * 0.3048^3)`],
    rule: 'rho in kg/m³, w the weight of a legal bushel in kg, by crop in the table of crops.',
    sources: [{ key: 'test-weight' }],
  },
  {
    id: 'bulk-density-by-moisture',
    title: 'Bulk density by moisture',
    functions: ['bulkDensityKgM3'],
    equations: ['rho = a + b * M'],
    rule: 'rho in kg/m³ as the grain lies; M in percent, wet basis; published for rice alone, a and b by type in the table.',
    sources: [{ key: 'aciar-rice-density' }],
  },
  {
    id: 'porosity',
    title: 'Share of air between the kernels',
    functions: ['bulkPorosity'],
    equations: ['e = 1 - rho / rho_k'],
    rule: 'rho of the heap and rho_k of the kernels, kg/m³, by crop in the table.',
    sources: [{ key: 'chang-1988' }],
  },
  {
    id: 'dry-matter',
    title: 'Dry matter in a volume',
    functions: ['dryMatterKg'],
    equations: ['D = V * rho * (1 - M_w)'],
    rule: 'D in kg, V in m³, rho as the grain lies in kg/m³. By definition.',
    sources: [],
  },
  {
    id: 'specific-heat',
    title: 'Specific heat of grain',
    functions: ['specificHeatJKgK', 'specificHeatSpreadJKgK'],
    equations: ['c = a + b * M'],
    rule: 'c in J/(kg K); M in percent of the basis that the source uses; a and b by crop in the table. A crop without a line of its own lies between the lowest and the highest of the others.',
    sources: [{ key: 'asae-d243' }],
  },
  {
    id: 'conductivity',
    title: 'Conductivity of grain in bulk',
    functions: ['bulkConductivityWMK'],
    equations: ['k = a + b * M'],
    rule: 'k in W/(m K), still air between the kernels; M in percent, wet basis; a and b by crop in the table.',
    sources: [{ key: 'asae-d243' }],
  },
  {
    id: 'conducted',
    title: 'Temperatures of grain at rest between two faces',
    functions: ['slabOf'],
    equations: [],
    rule: 'dT/dt = a * d2T/dz2 + r * (T_side - T) between two faces of given temperatures; a in m2/s, r in 1/s; steps of a quarter day, cells of 5 cm.',
    sources: [{ key: 'carslaw-jaeger-1959', place: 'ch. 2' }],
  },
  {
    id: 'corn-loss',
    title: 'Dry matter lost by shelled corn',
    functions: ['cornDryMatterLoss', 'cornReferenceHours'],
    equations: ['L = (0.0884 * (exp(0.006 * theta) - 1) + 0.00102 * theta) / 100'],
    rule: 'L as a fraction of the dry matter after theta hours at the reference state: 60 °F, 25 % moisture, 30 % mechanical damage.',
    sources: [{ key: 'steele-1969' }],
  },
  {
    id: 'corn-moisture',
    title: 'Storage time of corn: moisture',
    functions: ['cornMoistureMultiplier'],
    equations: ['k_M = 0.103 * (exp(455 / m^1.53) - 0.00845 * m + 1.558)'],
    rule: 'Multiplies the time; m in percent of the dry matter; 13 to 35 % wet basis.',
    sources: [{ key: 'steele-1969' }],
  },
  {
    id: 'corn-cold',
    title: 'Storage time of corn: 60 °F and colder, low-temperature form',
    functions: ['cornTemperatureMultiplier'],
    equations: ['k_T = 128.76 * exp(-4.86 * F / 60)'],
    rule: 'Multiplies the time; F in °F. The kit’s default.',
    sources: [{ key: 'saul-1970' }],
  },
  {
    id: 'corn-carried-down',
    title: 'Storage time of corn: carried-down form, and above 60 °F',
    functions: ['cornTemperatureMultiplier'],
    equations: ['k_T = 32.3 * exp(-3.48 * F / 60) + w * exp(0.61 * (F - 60) / 60)'],
    rule: 'Multiplies the time; w is what the moisture has over 19 % wet basis above 60 °F, as a fraction up to 0.09, else 0. Corn wetter than 19 % steps up by as much as 9 % at 60 °F: the equation’s own fault, left as published. Carried down below 60 °F it halves the time at 30 °F; both forms are in published use.',
    sources: [{ key: 'thompson-1972' }],
  },
  {
    id: 'corn-damage',
    title: 'Storage time of corn: mechanical damage',
    functions: ['cornDamageMultiplier'],
    equations: ['k_D = 2.08 * exp(-2.39 * d)'],
    rule: 'Multiplies the time; d is the share of broken kernels by mass.',
    sources: [{ key: 'thompson-1972' }],
  },
  {
    id: 'corn-storage',
    title: 'Storage time of shelled corn',
    functions: ['cornStorageHours', 'cornReferenceHoursPerHour'],
    equations: ['H = theta * k_M * k_T * k_D', 'r = 1 / (k_M * k_T)'],
    rule: `H hours until the loss is ${100 * USUAL_LOSS} % of the dry matter, theta the hours at the reference state for that loss; k_D is 1 unless damage is stated; hybrid and fungicide multiply too where stated. An hour in the bin is worth r hours at the reference state. Combine-shelled corn has been found to lose a grade at 0.35 %.`,
    sources: [
      { key: 'steele-1969' },
      { key: 'thompson-1972' },
      { key: 'saul-1970' },
      { key: 'asabe-d535' },
      { key: 'ng-1998' },
    ],
  },
  {
    id: 'wheat-storage',
    title: 'Storage time of wheat to 19 % moisture',
    functions: ['wheatStorageHours'],
    equations: ['H = 24 * 10^(6.234 - 0.2118 * m - 0.0527 * t)'],
    rule: 'H hours until germination is down to 95 %; m in percent, wet basis, t in °C. One equation for all wheats, an order of magnitude.',
    sources: [{ key: 'fraser-muir-1981' }],
  },
  {
    id: 'wheat-storage-damp',
    title: 'Storage time of wheat above 19 % moisture',
    functions: ['wheatStorageHours'],
    equations: ['H = 24 * 10^(4.129 - 0.0997 * m - 0.0576 * t)'],
    rule: 'As above. At 19 % the two do not meet: colder than 5 °C the damper wheat is given up to 6 % more time, warmer up to a third less; left as published.',
    sources: [{ key: 'fraser-muir-1981' }],
  },
  {
    id: 'canola-storage',
    title: 'Storage time of canola',
    functions: ['canolaStorageHours'],
    equations: ['H = 24 * 10^(6.224 - 0.302 * m - 0.069 * t)'],
    rule: 'H hours until germination begins to suffer; m in percent, wet basis, t in °C.',
    sources: [{ key: 'kreyger-1972' }],
  },
];
