import type { Units } from '../report/units.ts';
import type { Compared } from './compare-words.ts';
import { known } from './words.ts';

/** Hours by which the two numbers may part without a word. */
const ALIKE = 0.005;

/** Where a bin's cost is of more fan hours than took its points out: what the hours for a point here are, and what they are by its moistures. */
export function hoursApartNotes(bins: readonly Compared[], units: Units): string[] {
  return bins.flatMap(({ review, beside }) => {
    if (beside.measure === 'costPerBushel' || beside.factors === null) return [];
    const paid = known(beside.factors.hours);
    const own = known(review.rates?.season?.hoursPerPoint ?? { value: null, interval: null, why: '' });
    if (paid === null || own === null || Math.abs(own.value / paid.value - 1) < ALIKE) return [];
    return [
      `${review.bin.name}: all fan hours that were paid come to ${units.say('hours', paid)} for a point; between the two moistures a point took ${units.say('hours', own)} (see Moisture).`,
    ];
  });
}
