import type { BinReview } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { changeSaid, known } from './words.ts';

/** Which bin lost the most points and which the least; one whose points may be zero has no place among them. */
export function pointsLead(bins: readonly BinReview[], units: Units): string {
  const told = bins
    .flatMap((one) => {
      const points = known(one.moisture.pointsRemoved);
      return points === null ? [] : [{ one, points }];
    })
    .sort((a, b) => b.points.value - a.points.value);
  const [most] = told;
  const least = told.at(-1);
  const untold = bins.filter((one) => one.moisture.pointsRemoved.value === null).map((one) => one.bin.name);
  const rest = untold.length === 0 ? '' : ` It can’t be told of ${listed(untold)}.`;
  if (most === undefined || least === undefined)
    return 'Can’t tell how many points came out of any bin; each bin’s section says why.';
  const said = ({ one, points }: typeof most) => `${one.bin.name} ${changeSaid(points, units)}`;
  if (most === least) return `${said(most)}.${rest}`;
  const place = ({ points }: typeof most, word: string) =>
    (points.interval?.[0] ?? points.value) > 0 ? `, ${word}` : '';
  return `${said(most)}${place(most, 'the most')}; ${said(least)}${place(least, 'the least')}.${rest}`;
}
