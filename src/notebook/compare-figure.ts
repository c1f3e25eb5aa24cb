import { listed } from '../base/listed.ts';
import { rankedCosts } from '../report/figures/ranked-costs.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { type Compared, costQuantity, costShown, cropName, placeText } from './compare-words.ts';
import { capital, counted } from './words.ts';

/** Bins of one goal by cost, a group for each crop; none where fewer than two have a cost. */
export function comparedFigure(bins: readonly Compared[], units: Units): Figure[] {
  const known = bins.filter(({ beside }) => beside.cost.value !== null);
  if (known.length < 2) return [];
  const { measure } = known[0].beside;
  const crops = [...new Set(known.map(({ review }) => review.bin.grain.crop))];
  const lacking = bins.length - known.length;
  return [
    rankedCosts(
      {
        id: 'costs',
        title: titleOf(known),
        quantity: costQuantity(measure),
        groups: crops.map((crop) => ({
          name: capital(cropName(crop)),
          bins: known
            .filter(({ review }) => review.bin.grain.crop === crop)
            .map((one) => ({
              name: one.review.bin.name,
              cost: costShown(one, units),
              place: one.beside.rank === null ? null : placeText(one.beside.rank),
            })),
        })),
        notShown:
          lacking === 0
            ? null
            : `${lacking} of ${counted(bins.length, 'bin')} not shown: the table of bins not ranked says why.`,
      },
      units,
    ),
  ];
}

/** The finding: who holds first place, alone or shared. */
function titleOf(known: readonly Compared[]): string {
  const crops = [
    ...new Set(known.filter(({ beside }) => beside.rank !== null).map(({ review }) => review.bin.grain.crop)),
  ];
  const told = crops.map((crop) => {
    const of = known.filter(({ review, beside }) => review.bin.grain.crop === crop && beside.rank !== null);
    const first = of.filter(({ beside }) => beside.rank?.best === 1).map(({ review }) => review.bin.name);
    const what = crops.length > 1 ? ` with ${cropName(crop)}` : '';
    if (first.length === 1) return `${first[0]} was cheapest${what}`;
    if (first.length === of.length) return `all intervals overlap, so the places are shared${what}`;
    return first.length <= 3 && crops.length === 1
      ? `${listed(first)} share first place${what}`
      : `${first.length} of ${of.length} bins share first place${what}`;
  });
  return told.length === 0 ? 'No two of these can be ranked' : capital(listed(told));
}
