import type { BinReview } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { reaching, reachingDown, thoughSaid } from './may-be-alike.ts';
import { changeSaid, known } from './words.ts';

/** Which bin lost the most points and which the least, and who may have lost as many; one whose points may be zero has no place among them. */
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
  const sized = ({ one, points }: typeof most) => ({ name: one.bin.name, of: points });
  const among = (each: typeof most) => told.filter((other) => other !== each).map(sized);
  const lost = ({ points }: typeof most) => (points.interval?.[0] ?? points.value) > 0;
  const first = lost(most)
    ? `, the most${thoughSaid(reaching(sized(most), among(most)), 'may have lost as much')}`
    : '';
  const last = lost(least) && reachingDown(sized(least), among(least)).length === 0 ? ', the least' : '';
  return `${said(most)}${first}; ${said(least)}${last}.${rest}`;
}
