import { assertRange } from '../base/errors.ts';
import { EQUILIBRIUM_RH_RANGE, equilibriumHumidity, equilibriumMoistureWb } from './equilibrium.ts';
import { type Isotherm, isothermsOf } from './isotherm.ts';
import { isothermMoistureDb } from './isotherm-equations.ts';
import { wetFromDry } from './moisture-basis.ts';

/** What one isotherm of a crop says; null where it has no answer for this air. */
export interface IsothermAnswer {
  isotherm: Isotherm;
  moistureWb: number | null;
}

/**
 * Equilibrium moisture by every isotherm of a crop, so that a page can say how far the choice moves its answer.
 *
 * @param crop   id of the crop table
 * @param tempC  degC, -40 to 60
 * @param rh     relative humidity over water, fraction, 0 to 1; held at 0.10 and 0.95
 * @returns      in the order of the table; look at `confirmation` before taking the ends as an interval
 * @source       of each: `isotherm.sourceKey`
 * @valid        throws RangeError outside; an isotherm that ends before `tempC`, or gives no water there, answers null
 */
export function equilibriumByIsotherm(crop: string, tempC: number, rh: number): IsothermAnswer[] {
  assertRange('tempC', tempC, -40, 60);
  assertRange('rh', rh, 0, 1);
  const held = Math.min(Math.max(rh, EQUILIBRIUM_RH_RANGE[0]), EQUILIBRIUM_RH_RANGE[1]);
  return isothermsOf(crop).map((isotherm) => {
    const { equation, a, b, c, tempRangeC } = isotherm;
    const moistureDb = isothermMoistureDb(equation, a, b, c, tempC, held);
    const answers = tempC >= tempRangeC[0] && tempC <= tempRangeC[1] && moistureDb > 0;
    return { isotherm, moistureWb: answers ? wetFromDry(moistureDb) : null };
  });
}

/**
 * Moisture that a cable would have told with another isotherm: back to the humidity that it measured, and down again.
 *
 * @param from        by which the cable turned humidity into moisture
 * @param to          the isotherm wanted
 * @param tempC       degC, within both isotherms' `tempRangeC`
 * @param moistureWb  as the cable told it, fraction, wet basis, 0.01 to 0.6
 * @returns           fraction, wet basis; the humidity is held at 0.10 and 0.95 on the way
 * @source            of the constants: `from.sourceKey`, `to.sourceKey`
 * @valid             throws RangeError outside
 */
export function moistureByOtherIsothermWb(from: Isotherm, to: Isotherm, tempC: number, moistureWb: number): number {
  return equilibriumMoistureWb(to, tempC, equilibriumHumidity(from, tempC, moistureWb));
}
