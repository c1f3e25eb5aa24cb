import type { BinReview } from '../analysis/types.ts';
import { moreFans, moreFansWhy } from '../analysis/what-if/more-fans.ts';
import type { Units } from '../report/units.ts';

/** What the table must say of them. */
export function moreFansNotes(bins: readonly BinReview[], units: Units): string[] {
  return bins.flatMap((one) => {
    const more = moreFans(one);
    if (more === null) return [];
    return [
      `${moreFansWhy(one, more)} It made ${units.say('share', more.share)} of the energy by log. So no run is told as what the season cost, and no saving against it; the rules’ costs stand beside each other.`,
    ];
  });
}
