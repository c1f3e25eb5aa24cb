import type { BinReview } from '../analysis/types.ts';
import { type Crossed, type CrossedBin, type CrossedPart, wasRun } from '../analysis/what-if/crossed-types.ts';
import { listed } from '../base/listed.ts';
import type { KeyNumber, SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { STRATEGIES } from '../simulation/strategies/strategies.ts';
import { cheaperElsewhere, crossedUntold, GOAL_SAID, notHeldWhy, sharesSaid, waysRun } from './bin-or-rule-matrix.ts';
import { capital, counted } from './words.ts';

/** The page in a sentence: where bin and way can be told apart, and in which bins another's way would have cost less. */
export function binOrRuleAnswer(crossed: Crossed | undefined, reviews: readonly BinReview[], units: Units): string {
  const untold = crossedUntold(crossed);
  if (crossed === undefined || untold !== null) return `Can’t tell: ${untold}`;
  const run = crossed.bins.filter(wasRun);
  const apart = crossed.parts.filter(({ split }) => split !== null);
  const not = crossed.parts.filter(({ split }) => split === null);
  const alike =
    apart.length === 0
      ? `Bin and way can’t be told apart.${firstWhy(not)}`
      : `Bin and way can’t be told apart in bins ${listed(not.map(({ goal }) => GOAL_SAID[goal]))}.`;
  const told = [...apart.map((part) => apartSaid(part, units)), ...(not.length === 0 ? [] : [alike])];
  return [...told, cheaperSaid(run, crossed, reviews, units)].join(' ');
}

/** Why not, of the first goal; which bins that are is said where there are others. */
function firstWhy(parts: readonly CrossedPart[]): string {
  const [first] = parts;
  if (first === undefined || first.why === null) return '';
  const { goal, why } = first;
  return parts.length === 1 ? ` ${why}` : ` Bins ${GOAL_SAID[goal]}: ${why.charAt(0).toLowerCase()}${why.slice(1)}`;
}

/** How much of the differences each of the two makes; which makes more is left open where their ranges meet. */
function apartSaid({ goal, split, ranges, binIds }: CrossedPart, units: Units): string {
  const start = `In the ${counted(binIds.length, 'bin')} ${GOAL_SAID[goal]}`;
  const { bin, way } = sharesSaid({ split: split!, ranges }, units);
  if (ranges !== null && ranges.rows[0] <= ranges.columns[1] && ranges.columns[0] <= ranges.rows[1]) {
    return `${start} the log leaves open whether bin or way makes more of the differences in cost: the bin ${bin}, the way ${way}, by the model.`;
  }
  const { rows, columns } = split!.share;
  const [more, less] = rows > columns ? [`bin makes ${bin}`, `way ${way}`] : [`way makes ${way}`, `bin ${bin}`];
  return `${start} the ${more} of the differences in cost, the ${less}, by the model${ranges === null ? ' as fitted' : ''}.`;
}

function cheaperSaid(
  run: readonly CrossedBin[],
  { ways }: Crossed,
  reviews: readonly BinReview[],
  units: Units,
): string {
  const notHeld = notHeldWhy(run);
  if (notHeld !== null) return `Whether another bin’s way costs less can’t be told. ${notHeld}`;
  const cheaper = cheaperElsewhere(run);
  const named = cheaper.map(({ binId, wayId }) => {
    const name = reviews.find(({ bin }) => bin.id === binId)?.bin.name ?? binId;
    return `${name} (${ways.find(({ id }) => id === wayId)?.title.toLowerCase() ?? wayId})`;
  });
  return named.length === 0
    ? 'In no bin does another bin’s way clearly reach the target for less than its own.'
    : `Another bin’s way would have brought ${listed(named)} to the target for clearly less.${ownSaid(run, cheaper, units)}`;
}

/** Less than what: the own way as the kit runs it is not what the log's hours cost. */
function ownSaid(run: readonly CrossedBin[], cheaper: ReturnType<typeof cheaperElsewhere>, units: Units): string {
  const cells = cheaper.map(({ binId, wayId }) => {
    const all = run.find((bin) => bin.binId === binId)?.cells ?? [];
    return { own: all.find(({ own }) => own), other: all.find((cell) => cell.wayId === wayId) };
  });
  const rules = cells.filter(({ own }) => own !== undefined && STRATEGIES.some(({ id }) => id === own.wayId));
  const [only] = cells;
  const much =
    cells.length === 1 && only.other !== undefined
      ? ` It costs ${units.say('times', only.other.overOwn)} as much there as the bin’s own way`
      : ' That is less than the bins’ own ways cost';
  return rules.length === 0
    ? `${much}.`
    : `${much} as the kit runs it by its rule, which ${cells.length === 1 && only.own?.reached === false ? 'misses the target and ' : ''}is not what the hours in the log cost.`;
}

export function binOrRuleKeys(crossed: Crossed | undefined): KeyNumber[] {
  const run = crossed?.bins.filter(wasRun) ?? [];
  const none = capital(crossedUntold(crossed) ?? '');
  const notHeld = notHeldWhy(run);
  return [
    {
      label: 'Bins run in each other’s way',
      quantity: 'count',
      amount: run.length,
      note:
        run.length === 0 ? none : `of ${counted(crossed!.bins.length, 'bin')}, in ${counted(waysRun(crossed!), 'way')}`,
    },
    {
      label: 'Bins with a cheaper way among the others’',
      quantity: 'count',
      amount: run.length === 0 || notHeld !== null ? null : cheaperElsewhere(run).length,
      note: run.length === 0 ? none : notHeld !== null ? notHeld : 'that reaches the target for less in every run',
    },
  ];
}

/** What the page of strategies keeps of it. */
export function binOrRulePointer(
  crossed: Crossed | undefined,
  reviews: readonly BinReview[],
  units: Units,
): SectionBody {
  return { lead: binOrRuleAnswer(crossed, reviews, units), see: BIN_OR_RULE };
}

/** Where the whole of it stands. */
const BIN_OR_RULE = { file: 'bin-or-rule.html', title: 'Bin or rule: every bin’s way on every bin' };
