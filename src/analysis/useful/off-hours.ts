import { type Estimate, withheld } from '../../base/estimate.ts';
import type { KnownHours } from './hour-cases.ts';
import type { Aim } from './hour-effects.ts';
import type { HourPieces } from './hour-pieces.ts';
import { sumOf, sumWhere } from './hour-sums.ts';
import { type Judged, type JudgedCases, mostOf, spanned } from './judged-hours.ts';
import { HOUR_CLASSES } from './useful-hours-types.ts';

const EMPTY = HOUR_CLASSES.indexOf('empty');

/** Hours that the fan stood still, or may have: what their air and grain were, and what running could have done. */
export interface StillHours {
  pieces: HourPieces;
  known: KnownHours;
  cases: JudgedCases;
}

/**
 * Hours with the fan off in which running would have paid; only the hours, for what they would have cost is not known.
 *
 * @param silent  hours of which the log does not tell whether the fan ran: they are in the upper end
 */
export function offHours(aim: Aim, { pieces: off, known, cases }: StillHours, silent: StillHours): Estimate {
  if (aim.goal === 'hold') return withheld('The goal is to hold the grain, which has no target to run the fan for.');
  if (aim.goal === 'cool' && aim.tempC === null) return withheld('No target temperature is stated.');
  if (aim.goal !== 'cool' && aim.moistureWb === null) return withheld('No target moisture is stated.');
  const lacking = ({ air, grainC, grainWb }: KnownHours, i: number) =>
    Number.isNaN(aim.goal === 'cool' ? air.tempC[i] + grainC[i] : air.rh[i] + grainWb[i]);
  const untold = sumWhere(off, (i) => lacking(known, i));
  const all = sumOf(off.hours);
  if (all > 0 && untold > all / 2) {
    return withheld('Of more than half of the hours with the fan off, air or grain is not known.');
  }
  const maybe = (one: Judged) =>
    sumWhere(silent.pieces, (i) => one.classes[i] !== EMPTY && (one.pays[i] === 1 || lacking(silent.known, i)));
  return spanned(cases, (one) => sumWhere(off, (i) => one.pays[i] === 1), {
    most: all + sumOf(silent.pieces.hours),
    more: untold + mostOf(silent.cases, maybe),
    sd: 0,
  });
}
