import { LATER_STAGES } from '../analysis/moisture/later-stages.ts';
import type { BinReview } from '../analysis/types.ts';
import { withheld } from '../base/estimate.ts';
import type { Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { momentEstimate, tradeTable } from './bin-table.ts';
import { namedTable } from './estimate-rows.ts';
import { grainFrom } from './grain-from.ts';
import { errorTable, momentTable, sharesTable } from './moisture-tables.ts';
import { changeSaid, known, sentence } from './words.ts';

/**
 * One bin: what came out, from which readings, and what the interval is made of.
 *
 * @param several  the page's tables of all bins and the figures say the first numbers, so that paper does not repeat them
 */
export function moistureSection(one: BinReview, units: Units, several: boolean) {
  const { moisture, bin } = one;
  const points = known(moisture.pointsRemoved);
  const { start, end } = moisture;
  const notAgain = (table: Table): Table => (several ? { ...table, printed: false } : table);
  return {
    lead:
      points === null
        ? `Can’t tell the points removed from ${bin.name}: ${sentence(moisture.pointsRemoved.why ?? 'not known')}`
        : `${bin.name} ${changeSaid(points, units)}, from ${units.say('moisture', momentEstimate(start, null))} to ${units.say('moisture', momentEstimate(end, null))}${isWhole(one) ? '' : ' while the bin was whole'}.`,
    table: notAgain(tradeTable([one], units)),
    tables: [
      notAgain(
        namedTable(
          'numbers',
          `More of the grain of ${bin.name}`,
          [
            {
              label: 'Points removed per 100 fan hours between the two moistures',
              quantity: 'points per hundred hours',
              amount: moisture.perHundredFanHours,
            },
            {
              label: 'Depth of the grain, by the temperatures at rest',
              quantity: 'length',
              amount: one.surface?.depthM ?? withheld('It was not worked out.'),
            },
            {
              label: 'Temperature at the start',
              quantity: 'temperature',
              amount: momentEstimate(one.temperature.start, one.temperature.why),
            },
            {
              label: 'Temperature at the end',
              quantity: 'temperature',
              amount: momentEstimate(one.temperature.end, one.temperature.why),
            },
          ],
          units,
        ),
      ),
      momentTable(one),
      errorTable(moisture),
      sharesTable(moisture),
    ],
    notes: [...grainFrom([one]), ...moisture.notes, ...(one.temperature.why === null ? [] : [one.temperature.why])],
  };
}

/** Points that count what the rest lost after the first grain was taken out are no longer start less end. */
function isWhole({ moisture }: BinReview): boolean {
  return !moisture.errorParts.some(({ cause }) => cause === LATER_STAGES);
}
