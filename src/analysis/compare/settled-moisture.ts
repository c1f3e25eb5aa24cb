import { relativeHumidityWarmed } from '../../air/warm-air.ts';
import { errorText } from '../../base/error-text.ts';
import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { equilibriumMoistureWb } from '../../grain/equilibrium.ts';
import { type Isotherm, isothermOf, isothermsOf } from '../../grain/isotherm.ts';
import type { Bin } from '../../season/season.ts';
import type { FanPieces } from '../fronts/fan-pieces.ts';
import type { FillAir } from './comparison.ts';

/** What is known for less than this part of the fan hours is not told. */
export const LEAST_KNOWN = 0.8;

/**
 * The mean over fan hours of the moisture at which a bin's crop settles in each hour's air, outdoor air warmed at the same
 * water content; its interval spans the editions of the isotherm.
 *
 * @param outdoorC, outdoorRh, enteringC  [pieces]; NaN where not known
 */
export function settledMoistures(
  bin: Bin,
  pieces: FanPieces,
  outdoorC: Float64Array,
  outdoorRh: Float64Array,
  enteringC: Float64Array,
): { moistureWb: Estimate; byIsotherm: FillAir['byIsotherm'] } {
  const { crop, isotherm: named } = bin.grain;
  let own: Isotherm;
  try {
    own = isothermOf(crop, named ?? undefined);
  } catch (error) {
    return { moistureWb: withheld(errorText(error)), byIsotherm: [] };
  }
  const rh = outdoorC.map((temp, i) =>
    Number.isNaN(outdoorRh[i] + enteringC[i])
      ? Number.NaN
      : Math.min(1, relativeHumidityWarmed(temp, outdoorRh[i], enteringC[i] - temp)),
  );
  const byIsotherm = isothermsOf(crop).flatMap((isotherm) => {
    const moistureWb = meanOver(
      pieces,
      rh.map((each, i) => settled(isotherm, enteringC[i], each)),
    );
    return moistureWb === null ? [] : [{ isotherm: isotherm.name, moistureWb }];
  });
  const value = byIsotherm.find((one) => one.isotherm === own.name)?.moistureWb;
  if (value === undefined) {
    const why = 'The air at fill is outside what the isotherm covers in too many of its fan hours.';
    return { moistureWb: withheld(why), byIsotherm: [] };
  }
  const all = byIsotherm.map((one) => one.moistureWb);
  return { moistureWb: estimate(value, Math.min(...all), Math.max(...all)), byIsotherm };
}

function settled(isotherm: Isotherm, tempC: number, rh: number): number {
  if (Number.isNaN(rh)) return Number.NaN;
  try {
    return equilibriumMoistureWb(isotherm, tempC, rh);
  } catch {
    // Beyond the equation's range: the hour says nothing.
    return Number.NaN;
  }
}

/** Mean by fan hours, of those in which the value is known; null where these are too few. */
export function meanOver(pieces: FanPieces, values: Float64Array): number | null {
  let sum = 0;
  let known = 0;
  let all = 0;
  pieces.hours.forEach((hours, i) => {
    all += hours;
    if (Number.isNaN(values[i])) return;
    known += hours;
    sum += hours * values[i];
  });
  return known > 0 && known >= LEAST_KNOWN * all ? sum / known : null;
}
