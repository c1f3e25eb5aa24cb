import type { WayWeight } from '../analysis/what-if/way-weights.ts';
import { overdryingFraction } from '../money/overdrying-weight.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { Played } from './strategy-words.ts';

/** Told from this part of the weight on: half a percent is what meters part by. */
const LOST_TOLD = 0.005;

const weightOf = ({ whatIf: { weights } }: Played, id: string | undefined): WayWeight | null =>
  weights?.ways.find((one) => one.id === id) ?? null;

/** What the rule named dries away beyond what the season as run did, money; below 0 where it is less, 0 where nobody can tell. */
export function moreDriedAway(one: Played): number {
  const rule = weightOf(one, one.pick?.id)?.givenAway.value ?? null;
  const asRun = weightOf(one, one.whatIf.logged?.id)?.givenAway.value ?? null;
  return rule === null || asRun === null ? 0 : rule - asRun;
}

/** What a rule leaves its grain drier than asked for: weight that is not sold, and in no rule's cost. */
export function drierSaid(one: Played, units: Units): string {
  const { review, whatIf, pick } = one;
  const belowWb = whatIf.weights?.belowWb ?? review.bin.grain.targetMoistureWb;
  if (pick === null || review.bin.goal !== 'dry' || belowWb === null) return '';
  const { endMoistureWb } = pick.outcome;
  const lost = overdryingFraction(belowWb, endMoistureWb);
  const drier = `It would have ended at ${units.say('moisture', endMoistureWb)}, ${units.say('share', lost)} of its weight lighter than at ${units.say('moisture', belowWb)}`;
  const weight = weightOf(one, pick.id);
  if (weight === null) return lost < LOST_TOLD ? '' : ` ${drier}; that is in no rule’s cost.`;
  const together = togetherSaid(one, weight, units);
  if (lost < LOST_TOLD) return together === null ? '' : ` ${together}`;
  const asRun = weightOf(one, whatIf.logged?.id);
  const beside = asRun === null ? '' : ` (as run ${units.say('money', asRun.givenAway.value)})`;
  const still =
    together ?? (weight.together.value === null ? '' : 'With over-drying counted the rule comes to the least as well.');
  return ` ${drier}: ${units.say('money', weight.givenAway)} at the stated price${beside}, in no rule’s cost.${still === '' ? '' : ` ${still}`}`;
}

/** The rule that comes to less with the weight counted; null where that is the one named, or nobody can tell. */
function togetherSaid({ whatIf, pick }: Played, named: WayWeight, units: Units): string | null {
  const { weights, strategies } = whatIf;
  const other = strategies.find(({ id }) => id === weights?.pick);
  const of = weights?.ways.find(({ id }) => id === other?.id);
  if (other === undefined || of === undefined || other.id === pick?.id) return null;
  const least = weights?.clear === true ? 'comes to the least' : 'may come to the least';
  return `With over-drying counted “${other.title.toLowerCase()}” ${least}: ${units.say('money', of.together)} together, this rule ${units.say('money', named.together)}.`;
}

/** Every way of a bin with the weight counted that it dries away; none where no way that reaches the target dries away a weight that is told. */
export function weightTables(one: Played, units: Units): Table[] {
  const { review, whatIf } = one;
  const { weights, logged, strategies } = whatIf;
  if (weights === null || logged === null) return [];
  const { belowWb } = weights;
  const ways = [logged, ...strategies];
  const tells = ({ outcome }: (typeof ways)[number]) =>
    outcome.reachedTarget && overdryingFraction(belowWb, outcome.endMoistureWb) >= LOST_TOLD;
  if (!ways.some(tells)) return [];
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
      rows: ways.map((way) => {
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

const NOT_KNOWN: Cell = { value: null, why: 'Not known.' };
