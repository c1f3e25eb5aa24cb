import type { Middle } from '../../base/stats/normal-mixture.ts';
import { bedWaveRatio } from '../../bin/bed-waves.ts';
import { type FrontSpread, frontRatioSpread } from '../../bin/front-spread.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { dryFromWet } from '../../grain/moisture-basis.ts';
import { specificHeatJKgK, specificHeatLinesOf } from '../../grain/specific-heat.ts';
import { specificHeatSpreadJKgK } from '../../grain/specific-heat-spread.ts';

/** Moistures within which the published heats of all crops speak, where a crop has none of its own. */
const SPREAD_RANGE_WB: readonly [number, number] = [0.09, 0.2];

/** The crop's isotherm for the season: as season.yaml names it, else the default. */
export function grainIsotherm(crop: string, named: string | null): Isotherm {
  return isothermOf(crop, named ?? undefined);
}

/**
 * How fast a temperature moves through the grain for the air that is sent, told for every temperature once: a table by half
 * a kelvin, straight lines between.
 *
 * @param moistureWb  fraction, wet basis, 0.05 to 0.4
 * @returns           kg dry grain per kg dry air at a temperature, degC
 * @source            sutherland-1971, as `bedWaveRatio`
 */
export function waveRatioAt(
  isotherm: Isotherm,
  heatJKgK: number,
  moistureWb: number,
  pressurePa: number,
): (tempC: number) => number {
  const [low, high] = [Math.max(-40, isotherm.tempRangeC[0]), Math.min(60, isotherm.tempRangeC[1])];
  const count = Math.round((high - low) * 2) + 1;
  const table = Float64Array.from({ length: count }, (_, i) =>
    bedWaveRatio('fast', isotherm, low + i / 2, dryFromWet(moistureWb), heatJKgK, pressurePa),
  );
  return (tempC) => {
    const at = Math.min(count - 1.001, Math.max(0, (tempC - low) * 2));
    const i = Math.floor(at);
    return table[i] + (at - i) * (table[i + 1] - table[i]);
  };
}

/** `waveRatioAt` of a crop with its default heat by moisture, to a thousandth; each table is made once. */
export function waveRatios(
  isotherm: Isotherm,
  crop: string,
  pressurePa: number,
): (moistureWb: number) => (tempC: number) => number {
  const made = new Map<number, (tempC: number) => number>();
  return (moistureWb) => {
    const key = Math.round(1000 * moistureWb);
    let found = made.get(key);
    if (found === undefined) {
      found = waveRatioAt(isotherm, grainHeatJKgK(crop, key / 1000), key / 1000, pressurePa);
      made.set(key, found);
    }
    return found;
  };
}

/** Specific heat of the grain with its water, as `frontRatioSpread` takes it for its value, J/(kg K). */
export function grainHeatJKgK(crop: string, moistureWb: number): number {
  const lines = specificHeatLinesOf(crop);
  const [least, most] = heatRangeWb(crop);
  const held = Math.min(most, Math.max(least, moistureWb));
  if (lines.length > 0) return specificHeatJKgK(lines[0], held);
  const [low, high] = specificHeatSpreadJKgK(held);
  return (low + high) / 2;
}

/** Moistures, wet basis, in which every line of the crop speaks, or those of all crops where it has none; beyond them the nearest counts. */
function heatRangeWb(crop: string): readonly [number, number] {
  const ranges = specificHeatLinesOf(crop).map(({ rangePct, basis }) =>
    rangePct.map((pct) => (basis === 'wet' ? pct / 100 : pct / (100 + pct))),
  );
  if (ranges.length === 0) return SPREAD_RANGE_WB;
  // a thousandth inside, so that the way there and back does not step out
  return [
    Math.max(0.051, ...ranges.map(([low]) => low + 0.001)),
    Math.min(0.399, ...ranges.map(([, high]) => high - 0.001)),
  ];
}

/**
 * What a crop's first specific heat counts beside all its others together. It is the standard's; where another parts from it, as
 * of soybeans, that was measured in grain of 42 degC and gives a kilogram of water more than twice the heat of liquid water.
 */
const FIRST_HEAT_WEIGHT = 2 / 3;

/** Airflow by other published isotherms and heats over that by the defaults. */
export interface ConstantsSpread {
  /** least and most: at most 1 and at least 1 */
  low: number;
  high: number;
  /** each answer, as a logarithm; weights sum to 1 */
  answers: readonly Middle[];
  isotherms: FrontSpread['isotherms'];
}

/** How far other published isotherms and heats move the airflow. Each heat has an answer by each isotherm, all of them as likely. */
export function constantsSpread(
  crop: string,
  moistureWb: number,
  coldC: number,
  warmC: number,
  pressurePa: number,
): ConstantsSpread {
  const [least, most] = heatRangeWb(crop);
  const held = Math.min(most, Math.max(least, moistureWb));
  const aheadC = warmC - coldC < 1 ? coldC + 1 : warmC;
  const front = { moistureWb: held, aheadC, behindC: coldC, pressurePa };
  const { value, low, high, byHeat, isotherms } = frontRatioSpread(crop, front);
  const others = byHeat.length - 1;
  const answers = byHeat.flatMap((ratios, k) => {
    const weight = others === 0 ? 1 : k === 0 ? FIRST_HEAT_WEIGHT : (1 - FIRST_HEAT_WEIGHT) / others;
    return ratios.map((ratio) => ({ at: Math.log(value / ratio), weight: weight / ratios.length }));
  });
  return { low: value / high, high: value / low, answers, isotherms };
}
