import { type Estimate, withheld } from '../../base/estimate.ts';
import type { KnownHours } from './hour-cases.ts';
import type { Aim } from './hour-effects.ts';
import type { HourPieces } from './hour-pieces.ts';
import { hoursWhere, sumOf, sumWhere } from './hour-sums.ts';
import { type JudgedCases, spanned } from './judged-hours.ts';

/** Hours with the fan off in which running would have paid; only the hours, for what they would have cost is not known. */
export function offHours(aim: Aim, off: HourPieces, cases: JudgedCases, known: KnownHours): Estimate {
  if (aim.goal === 'hold') return withheld('The goal is to hold the grain, which has no target to run the fan for.');
  if (aim.goal === 'cool' && aim.tempC === null) return withheld('No target temperature is stated.');
  if (aim.goal !== 'cool' && aim.moistureWb === null) return withheld('No target moisture is stated.');
  const air = aim.goal === 'cool' ? known.air.tempC : known.air.rh;
  const grain = aim.goal === 'cool' ? known.grainC : known.grainWb;
  const untold = sumWhere(off, (i) => Number.isNaN(air[i] + grain[i]));
  const all = sumOf(off.hours);
  if (all > 0 && untold > all / 2) {
    return withheld('Of more than half of the hours with the fan off, air or grain is not known.');
  }
  return spanned(
    cases,
    hoursWhere(off, ({ pays }) => pays, 1),
    all,
    untold,
  );
}
