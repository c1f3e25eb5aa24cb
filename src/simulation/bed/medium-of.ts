import { assertRange } from '../../base/errors.ts';
import { bulkConductivityWMK, CONDUCTIVITY_LINES } from '../../grain/conductivity.ts';
import { AS_WHEAT } from '../../grain/crops.ts';
import { GAS_WATER_J_KGK } from '../../grain/heat-of-vaporisation.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { isothermLogHumiditySlope } from '../../grain/isotherm-equations.ts';
import { specificHeatLinesOf } from '../../grain/specific-heat.ts';
import { hermiteTable } from './hermite-table.ts';
import type { Medium } from './medium.ts';
import { storageLifeOf } from './storage-life.ts';
import { thinLayerOf } from './thin-layer.ts';

export interface MediumOptions {
  /** as season.yaml names it; the crop's default */
  isotherm?: string;
  /** id of `THIN_LAYERS`; the crop's own */
  thinLayer?: string;
  /** multiplies the thin-layer rate, 0.05 to 20; 1 */
  rateFactor?: number;
}

/** Moistures and temperatures that the tables cover; beyond them the value at the end. */
const DRIEST_DB = 0.01;
const WETTEST_DB = 0.8;
const COLDEST_C = -40;
const HOTTEST_C = 70;
/** Where the heat that binds water is worked out: it moves by 3 % between 0 and 20 degC. */
const BINDING_AT_C = 10;

/**
 * The grain of a bed.
 *
 * @param crop            id of the crop table
 * @param dryDensityKgM3  dry matter of bulk grain, 200 to 1000 kg/m3
 * @valid                 throws RangeError on an unknown crop, isotherm or rate
 */
export function mediumOf(crop: string, dryDensityKgM3: number, options: MediumOptions = {}): Medium {
  assertRange('dryDensityKgM3', dryDensityKgM3, 200, 1000);
  const { rateFactor = 1 } = options;
  assertRange('rateFactor', rateFactor, 0.05, 20);
  const isotherm = isothermOf(crop, options.isotherm);
  const thin = thinLayerOf(crop, options.thinLayer);
  const { rate1S } = thin;
  const heat = heatOf(crop);
  return {
    crop,
    isotherm: isotherm.name,
    equation: isotherm.equation,
    ...productOf(isotherm),
    ...heat,
    binding: bindingOf(isotherm),
    rate: hermiteTable(COLDEST_C, HOTTEST_C, 221, (t) => (rate1S === null ? 1 : rateFactor * rate1S(t))),
    nearEquilibrium: rate1S === null,
    thinLayer: thin.name,
    dryDensityKgM3,
    conductivityWMK: conductivityOf(crop),
    storage: storageLifeOf(crop),
  };
}

/** q(T) and p(M) of the isotherm, see `Medium`. */
function productOf({ equation, a, b, c, tempRangeC }: Isotherm): Pick<Medium, 'byTemp' | 'byMoisture'> {
  const coldest = Math.max(COLDEST_C, tempRangeC[0]);
  const ofTemp: Record<typeof equation, (t: number) => number> = {
    'modified Henderson': (t) => a * (t + c),
    'modified Chung-Pfost': (t) => a / (t + c),
    'modified Halsey': (t) => Math.exp(a + b * t),
    'modified Oswin': (t) => (a + b * t) ** c,
  };
  const ofMoisture: Record<typeof equation, (m: number) => number> = {
    'modified Henderson': (m) => (100 * m) ** b,
    'modified Chung-Pfost': (m) => Math.exp(-b * 100 * m),
    'modified Halsey': (m) => (100 * m) ** -c,
    'modified Oswin': (m) => (100 * m) ** -c,
  };
  return {
    byTemp: hermiteTable(coldest, HOTTEST_C, 441, ofTemp[equation]),
    byMoisture: hermiteTable(DRIEST_DB, WETTEST_DB, 1581, ofMoisture[equation]),
  };
}

/** Heat that binds water, summed from the driest moisture up, J per kg of dry matter (Simpson between the points). */
function bindingOf({ equation, a, b, c }: Isotherm) {
  const factor = GAS_WATER_J_KGK * (BINDING_AT_C + 273.15) ** 2;
  const bound = (m: number) => factor * isothermLogHumiditySlope(equation, a, b, c, BINDING_AT_C, m);
  const points = 1581;
  const step = (WETTEST_DB - DRIEST_DB) / (points - 1);
  const sums = new Float64Array(points);
  for (let i = 1; i < points; i++) {
    const m = DRIEST_DB + (i - 1) * step;
    sums[i] = sums[i - 1] + (step / 6) * (bound(m) + 4 * bound(m + step / 2) + bound(m + step));
  }
  const at = (m: number) => sums[Math.round((m - DRIEST_DB) / step)];
  return hermiteTable(DRIEST_DB, WETTEST_DB, points, at, bound);
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
