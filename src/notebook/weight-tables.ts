import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import { overdryingFraction } from '../money/overdrying-weight.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { Played } from './strategy-words.ts';
import { LOST_TOLD, lessTogether, weightOf } from './weight-sums.ts';

/** Every way of a bin with the weight counted that it dries away; none where neither the season as run nor a way that reaches the target dries away a weight that is told, and it makes no other rule the cheapest. */
export function weightTables(one: Played, units: Units): Table[] {
  const { review, whatIf } = one;
  const { weights, logged, strategies } = whatIf;
  if (weights === null || logged === null) return [];
  const { belowWb } = weights;
  const ways = [logged, ...strategies];
  const tells = ({ id, outcome }: (typeof ways)[number]) =>
    (outcome.reachedTarget || id === logged.id) && overdryingFraction(belowWb, outcome.endMoistureWb) >= LOST_TOLD;
  if (!ways.some(tells) && lessTogether(one) === null) return [];
  return [
    {
      id: `weights-${review.bin.id}`,
      caption: `${review.bin.name}: with the over-drying below ${units.say('moisture', belowWb)}, at the stated price`,
      folded: true,
      columns: [
        { key: 'way', label: 'Way', quantity: null },
        { key: 'cost', label: 'Cost', quantity: 'money', known: 'by the model' },
        { key: 'away', label: 'Over-drying', quantity: 'money', known: 'by the model' },
        { key: 'together', label: 'Together', quantity: 'money', known: 'by the model' },
        { key: 'reaches', label: 'Target', quantity: null },
      ],
      rows: inOrder(one, ways).map((way) => {
        const of = weightOf(one, way.id);
        return {
          way: way.title,
          cost: way.cost,
          away: of === null ? NOT_KNOWN : of.givenAway,
          together: of === null ? NOT_KNOWN : of.together,
          reaches: way.outcome.reachedTarget ? 'reached' : 'not reached',
        };
      }),
    },
  ];
}

/** Those that reach the target first, each group by what they come to: a way that does not get there is not the least. */
function inOrder(one: Played, ways: readonly StrategyOutcome[]): StrategyOutcome[] {
  const together = ({ id }: StrategyOutcome) => weightOf(one, id)?.together.value ?? Number.POSITIVE_INFINITY;
  const reaches = ({ outcome }: StrategyOutcome) => Number(outcome.reachedTarget);
  return [...ways].sort((a, b) => reaches(b) - reaches(a) || together(a) - together(b));
}

const NOT_KNOWN: Cell = { value: null, why: 'Not known.' };
