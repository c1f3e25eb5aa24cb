import { assertRange } from '../../base/errors.ts';
import { bulkConductivityWMK, CONDUCTIVITY_LINES } from '../../grain/conductivity.ts';
import { AS_WHEAT } from '../../grain/crops.ts';
import { GAS_WATER_J_KGK } from '../../grain/heat-of-vaporisation.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { type IsothermEquation, isothermLogHumiditySlope } from '../../grain/isotherm-equations.ts';
import { specificHeatLinesOf } from '../../grain/specific-heat.ts';
import { cubicTable } from './cubic-table.ts';
import type { Medium } from './medium.ts';
import { TEMP_INTERVALS, TEMP_RANGE_C, TEMP_STEP_K } from './saturation-table.ts';
import { storageLifeOf } from './storage-life.ts';
import { thinLayerOf } from './thin-layer.ts';

export interface MediumOptions {
  /** as season.yaml names it; the crop's default */
  isotherm?: string;
  /** id of `THIN_LAYERS`; the crop's own */
  thinLayer?: string;
  /** multiplies the thin-layer rate, 0.05 to 20; 1 */
  rateFactor?: number;
  /** multiplies the heat and water of respiration, 0 to 10; 1 */
  respirationFactor?: number;
  /** multiplies the published specific heat, 0.5 to 2; 1 */
  heatFactor?: number;
  /** what this lot holds more than the isotherm says in the same air, fraction of dry matter, -0.05 to 0.05; 0 */
  moistureShiftDb?: number;
}

/** A rate so many times the published one is near balance: more changes nothing. */
export const MOST_RATE_FACTOR = 20;
/** Moistures and temperatures that the tables cover; beyond them the value at the end. */
const DRIEST_DB = 0.01;
const WETTEST_DB = 0.8;
const COLDEST_C = -40;
const HOTTEST_C = 70;
const MOISTURE_INTERVALS = 1580;
/** Beyond it exp(-z) is below what a double tells from 0; Oswin is then at 1 % moisture in heat. */
const MOST_PRODUCT = 40;
/** Where the heat that binds water is worked out: it moves by 3 % between 0 and 20 degC. */
const BINDING_AT_C = 10;
/** Of an isotherm that is moved towards the wet: where it is let begin, fraction of dry matter. */
const LEAST_SHIFTED_DB = 0.002;

/**
 * The grain of a bed.
 *
 * @param crop            id of the crop table
 * @param dryDensityKgM3  dry matter of bulk grain, 200 to 1000 kg/m3
 * @valid                 throws RangeError on an unknown crop, isotherm or rate
 */
export function mediumOf(crop: string, dryDensityKgM3: number, options: MediumOptions = {}): Medium {
  assertRange('dryDensityKgM3', dryDensityKgM3, 200, 1000);
  const { rateFactor = 1, respirationFactor = 1, heatFactor = 1, moistureShiftDb = 0 } = options;
  assertRange('rateFactor', rateFactor, 0.05, MOST_RATE_FACTOR);
  assertRange('respirationFactor', respirationFactor, 0, 10);
  assertRange('heatFactor', heatFactor, 0.5, 2);
  assertRange('moistureShiftDb', moistureShiftDb, -0.05, 0.05);
  const isotherm = isothermOf(crop, options.isotherm);
  const thin = thinLayerOf(crop, options.thinLayer);
  const { rate1S } = thin;
  const { heatDryJKgK, heatPerMoistureJKgK } = heatOf(crop);
  return {
    crop,
    isotherm: isotherm.name,
    ...partsOf(isotherm, moistureShiftDb),
    heatDryJKgK: heatFactor * heatDryJKgK,
    heatPerMoistureJKgK: heatFactor * heatPerMoistureJKgK,
    binding: bindingOf(isotherm, moistureShiftDb),
    rate: cubicTable(COLDEST_C, HOTTEST_C, 220, (t) => (rate1S === null ? 1 : rateFactor * rate1S(t))),
    nearEquilibrium: rate1S === null,
    thinLayer: thin.name,
    dryDensityKgM3,
    conductivityWMK: conductivityOf(crop),
    storage: storageLifeOf(crop),
    respirationFactor,
    rateFactor,
    heatFactor,
    moistureShiftDb,
  };
}

/** The equations of `isothermHumidity` in three parts, see `Medium`. */
const PARTS: Record<
  IsothermEquation,
  (
    a: number,
    b: number,
    c: number,
  ) => { q: (tempC: number) => number; p: (moistureDb: number) => number; f: (z: number) => number }
> = {
  'modified Henderson': (a, b, c) => ({
    q: (t) => a * (t + c),
    p: (m) => (100 * m) ** b,
    f: (z) => 1 - Math.exp(-z),
  }),
  'modified Chung-Pfost': (a, b, c) => ({
    q: (t) => a / (t + c),
    p: (m) => Math.exp(-b * 100 * m),
    f: (z) => Math.exp(-z),
  }),
  'modified Halsey': (a, b, c) => ({
    q: (t) => Math.exp(a + b * t),
    p: (m) => (100 * m) ** -c,
    f: (z) => Math.exp(-z),
  }),
  'modified Oswin': (a, b, c) => ({
    q: (t) => a + b * t,
    p: (m) => 1 / (100 * m),
    f: (z) => 1 / (1 + Math.abs(z) ** c),
  }),
};

function partsOf(
  { equation, a, b, c, tempRangeC }: Isotherm,
  shiftDb: number,
): Pick<Medium, 'byTemp' | 'byMoisture' | 'humidity'> {
  const { q, p: ofDryBasis, f } = PARTS[equation](a, b, c);
  const p = (m: number) => ofDryBasis(Math.max(LEAST_SHIFTED_DB, m - shiftDb));
  // Held beyond the isotherm's own temperatures, from a point of the table on: a bend within an interval would blur it.
  const coldest = Math.ceil(tempRangeC[0] / TEMP_STEP_K) * TEMP_STEP_K;
  const hottest = Math.floor(tempRangeC[1] / TEMP_STEP_K) * TEMP_STEP_K;
  const qPerK = (t: number) => (t < coldest || t > hottest ? 0 : (q(t + 1e-4) - q(t - 1e-4)) / 2e-4);
  return {
    byTemp: cubicTable(...TEMP_RANGE_C, TEMP_INTERVALS, (t) => q(Math.min(hottest, Math.max(coldest, t))), qPerK),
    byMoisture: cubicTable(DRIEST_DB, WETTEST_DB, MOISTURE_INTERVALS, p),
    humidity: cubicTable(0, MOST_PRODUCT, 32 * MOST_PRODUCT, f),
  };
}

/** Heat that binds water, summed from the driest moisture up, J per kg of dry matter (Simpson between the points). */
function bindingOf({ equation, a, b, c }: Isotherm, shiftDb: number) {
  const factor = GAS_WATER_J_KGK * (BINDING_AT_C + 273.15) ** 2;
  // A moved isotherm begins no drier than this one's table does.
  const bound = (m: number) =>
    factor * isothermLogHumiditySlope(equation, a, b, c, BINDING_AT_C, Math.max(DRIEST_DB, m - shiftDb));
  const step = (WETTEST_DB - DRIEST_DB) / MOISTURE_INTERVALS;
  const sums = new Float64Array(MOISTURE_INTERVALS + 1);
  for (let i = 1; i < sums.length; i++) {
    const m = DRIEST_DB + (i - 1) * step;
    sums[i] = sums[i - 1] + (step / 6) * (bound(m) + 4 * bound(m + step / 2) + bound(m + step));
  }
  const at = (m: number) => sums[Math.round((m - DRIEST_DB) / step)];
  return cubicTable(DRIEST_DB, WETTEST_DB, MOISTURE_INTERVALS, at, bound);
}

/** A crop without a published line takes the middle of those that there are. */
function heatOf(crop: string): Pick<Medium, 'heatDryJKgK' | 'heatPerMoistureJKgK'> {
  const line = specificHeatLinesOf(crop)[0];
  if (line === undefined) return { heatDryJKgK: 1450, heatPerMoistureJKgK: 5000 };
  const { baseJKgK: base, slopeJKgKPct: slope, basis } = line;
  // Of each kg of dry matter 1 + M kg lie there: (base + slope 100 M / (1 + M)) (1 + M) is a straight line.
  if (basis === 'wet') return { heatDryJKgK: base, heatPerMoistureJKgK: base + 100 * slope };
  // By dry basis a square stays, taken along its tangent at 16 %; 1 % off at 25 %.
  const at = 0.16;
  return { heatDryJKgK: base - 100 * slope * at * at, heatPerMoistureJKgK: base + 100 * slope * (1 + 2 * at) };
}

/** W/(m K) at 15 % wet basis; where none is published the middle of those that are, which Oklahoma State's R-1 per inch is too. */
function conductivityOf(crop: string): number {
  return CONDUCTIVITY_LINES[AS_WHEAT[crop] ?? crop] === undefined ? 0.144 : bulkConductivityWMK(crop, 0.15);
}
