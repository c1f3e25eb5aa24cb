import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import {
  type CornColdForm,
  cornDamageMultiplier,
  cornDryMatterLoss,
  cornMoistureMultiplier,
  cornTemperatureMultiplier,
} from './corn-loss.ts';

/** The loss at which shelled corn is taken to lose a grade. For combine-shelled corn 0.35 % has been found: ng-1998. */
export const USUAL_LOSS = 0.005;

export interface CornStorageOptions {
  /** dry matter that may be lost, fraction, 0.0001 to 0.05; `USUAL_LOSS` */
  loss?: number;
  /** `low-temperature` */
  form?: CornColdForm;
  /** mechanical damage, fraction, 0 to 0.5; left out: the reference corn, multiplier 1 */
  damageFraction?: number;
  /** multiplier of time for the hybrid, 0.1 to 10; 1 */
  hybrid?: number;
  /** multiplier of time for a fungicide, 0.1 to 10; 1 */
  fungicide?: number;
}

/**
 * Hours for which shelled corn may be held at one temperature and moisture before it has lost so much dry matter.
 *
 * @param tempC       grain temperature, degC, -30 to 40; published cells lie between -6.7 and 30; hotter, near 45, the addition for wet corn lets
 *                    wetter corn keep longer, which no corn does
 * @param moistureWb  fraction, wet basis, 0.13 to 0.35
 * @returns           h
 * @source            steele-1969, thompson-1972, saul-1970; basis of asabe-d535
 * @valid             throws RangeError outside
 */
export function cornStorageHours(tempC: number, moistureWb: number, options: CornStorageOptions = {}): number {
  const { loss = USUAL_LOSS, form = 'low-temperature', damageFraction, hybrid = 1, fungicide = 1 } = options;
  assertRange('tempC', tempC, -30, 40);
  assertRange('moistureWb', moistureWb, 0.13, 0.35);
  assertRange('hybrid', hybrid, 0.1, 10);
  assertRange('fungicide', fungicide, 0.1, 10);
  if (damageFraction !== undefined) assertRange('damageFraction', damageFraction, 0, 0.5);
  const damage = damageFraction === undefined ? 1 : cornDamageMultiplier(damageFraction);
  const state = cornMoistureMultiplier(moistureWb) * cornTemperatureMultiplier(tempC, moistureWb, form);
  return cornReferenceHours(loss) * state * damage * hybrid * fungicide;
}

/**
 * Hours at the reference state until so much dry matter is lost: `cornDryMatterLoss` solved for the time, by halving.
 *
 * @param loss  fraction of the dry matter, 0.0001 to 0.05
 * @returns     h
 * @valid       throws RangeError outside
 */
export function cornReferenceHours(loss: number): number {
  assertRange('loss', loss, 0.0001, 0.05);
  return halve(0, 2000, (middle) => cornDryMatterLoss(middle) < loss);
}
