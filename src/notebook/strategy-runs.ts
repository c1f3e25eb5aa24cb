import { reachedDay } from '../analysis/strategies/reached-day.ts';
import { DOUBTS } from '../analysis/what-if/doubts.ts';
import { runsOf } from '../analysis/what-if/what-if-summary.ts';
import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import { waysToRun } from '../report/figures/ways-to-run.ts';
import type { Cell, Figure, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { HELD, isHeld, missingRule, noRule, reachingSaid } from './no-rule.ts';
import type { Played } from './strategy-words.ts';
import { quoted } from './words.ts';

const missing = (why: string): Cell => ({ value: null, why });

const isApart = ({ id }: StrategyOutcome, { whatIf }: Played) =>
  id === whatIf.logged?.id || id === whatIf.hindsight?.id;

/** All that was run; a search for the cheapest that reaches a target tells nothing without a target, or without a price. */
function runsToTell(one: Played): StrategyOutcome[] {
  const { hindsight } = one.whatIf;
  const idle = isHeld(one) || hindsight?.cost.value === null;
  return runsOf(one.whatIf).filter(({ id }) => !(idle && id === hindsight?.id));
}

/** A bin's ways by cost; none where there are no runs, or none has a cost. */
export function strategyFigure(one: Played, units: Units): Figure[] {
  const runs = runsToTell(one);
  const unpriced = runs.filter(({ cost }) => cost.value === null);
  if (unpriced.length === runs.length) return [];
  return [
    waysToRun(
      {
        id: `ways-${one.review.bin.id}`,
        title: figureTitle(one),
        ways: runs.map((run) => ({
          name: run.title,
          cost: run.cost,
          reaches: isHeld(one) ? null : run.outcome.reachedTarget,
          apart: isApart(run, one),
        })),
        whisker: DOUBTS,
        notShown:
          unpriced.length === 0
            ? null
            : `${unpriced.map(({ title }) => quoted(title)).join(', ')}: ${unpriced[0].cost.why ?? 'not known'}`,
      },
      units,
    ),
  ];
}

function figureTitle(one: Played): string {
  const { review, whatIf, pick, rivals } = one;
  const { name } = review.bin;
  const kind = noRule(one)?.kind;
  if (kind === 'held') return `${name}: to be held, there is nothing to reach`;
  if (kind === 'unpriced') return `${name}: ${reachingSaid(whatIf)}, which is cheapest can’t be told`;
  const said = `${name}: ${reachingSaid(whatIf)}`;
  if (pick === null) return said;
  const named = (reach: boolean) =>
    [pick, ...rivals]
      .filter(({ outcome }) => outcome.reachedTarget === reach)
      .map(({ title }) => quoted(title.toLowerCase()));
  const [reaching, others] = [named(true), named(false)];
  const least = reaching.length === 0 ? '' : `, ${listed(reaching, 'or')}${leastSaid(one)}`;
  if (others.length === 0) return `${said}${least}`;
  // What does not reach in the bin as fitted may be the cheapest in one that goes with the log as well.
  return `${said} in the bin as fitted${least}; ${listed(others, 'or')} may too`;
}

/** Behind the rules named. The surest over all runs may be a little dearer than another in the bin as fitted, which the figure draws. */
function leastSaid({ whatIf, pick, rivals }: Played): string {
  const reaching = whatIf.strategies.filter(({ outcome }) => outcome.reachedTarget);
  if (reaching.length === 1) return '';
  const costOf = ({ cost }: StrategyOutcome) => cost.value ?? Number.POSITIVE_INFINITY;
  const least = Math.min(...reaching.map(costOf));
  const named = [pick, ...rivals].some((one) => one?.outcome.reachedTarget && costOf(one) === least);
  return named ? ' for the least' : ' most surely within 5 % of the least';
}

/** Every run of a bin. */
export function runsTable(one: Played): Table {
  const model = 'by the model';
  return {
    id: `runs-${one.review.bin.id}`,
    caption: `${one.review.bin.name}: every way to run it`,
    folded: true,
    columns: [
      { key: 'way', label: 'Way', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: model },
      { key: 'energy', label: 'Energy', quantity: 'energy', known: model },
      { key: 'cost', label: 'Cost', quantity: 'money', known: model },
      { key: 'end', label: 'Moisture at the end', quantity: 'moisture', known: model },
      { key: 'wettest', label: 'Wettest layer', quantity: 'moisture', known: model },
      { key: 'temp', label: 'Temperature at the end', quantity: 'temperature', known: model },
      { key: 'life', label: 'Storage time used', quantity: 'share', known: model },
      { key: 'reached', label: 'Target reached', quantity: 'day' },
      { key: 'runs', label: 'Runs that reach', quantity: null },
      { key: 'near', label: 'Runs as cheap, to 5 %', quantity: null },
    ],
    rows: runsToTell(one).map((run) => ({
      way: run.title,
      hours: run.outcome.fanHours,
      energy: Number.isNaN(run.outcome.energyKwh) ? missing(run.cost.why ?? 'not known') : run.outcome.energyKwh,
      cost: run.cost,
      end: run.outcome.endMoistureWb,
      wettest: run.outcome.wettestWb,
      temp: run.outcome.endTempC,
      life: Number.isNaN(run.outcome.lifeUsed)
        ? missing('No storage rule of this crop is known.')
        : run.outcome.lifeUsed,
      reached:
        run.reachedMs === null
          ? missing(isHeld(one) ? HELD : 'It does not reach the target.')
          : reachedDay(run.reachedMs),
      runs: isHeld(one) ? missing(HELD) : partOf(run.reaching, run.runs),
      near: nearSaid(one, run),
    })),
  };
}

/** Short: eleven columns are to stand on a sheet. */
const partOf = (some: number, all: number) => `${some} of ${all}`;

/** The log and the search in hindsight are no rules to choose from. */
function nearSaid(one: Played, run: StrategyOutcome): Cell {
  const { strategies, near } = one.whatIf;
  const k = strategies.findIndex(({ id }) => id === run.id);
  if (k < 0) return missing('It is no rule to choose for another season.');
  const why = missingRule(one) ?? run.cost.why;
  return why === null ? partOf(near[k], run.runs) : missing(why);
}
