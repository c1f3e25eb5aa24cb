import { LEAST_YEARS } from '../analysis/strategies/percentile-years.ts';
import { AS_LOGGED, IN_HINDSIGHT } from '../analysis/strategies/run-strategy.ts';
import type { StrategyYears } from '../analysis/strategies/strategy-years.ts';
import type { PlannedBin } from '../analysis/strategies/sweep-plan.ts';
import type { SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { Swept } from '../analysis/strategies/swept.ts';
import type { BinReview } from '../analysis/types.ts';
import { type Estimate, scaled, withheld } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { waysAcrossBins } from '../report/figures/ways-across-bins.ts';
import type { Cell, Entry, Figure, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { perGrain } from './per-grain.ts';
import { wayTitleOf } from './way-title.ts';
import { counted } from './words.ts';

/** A bin of a sweep with what its strategies came to over the years. */
interface SweptBin {
  planned: PlannedBin;
  review: BinReview | undefined;
  told: readonly StrategyYears[];
}

const APART: Readonly<Record<string, string>> = {
  [AS_LOGGED]: 'As logged, this season',
  [IN_HINDSIGHT]: 'Best in hindsight',
};

/** What every strategy costs in other years, by the sweep that stands beside the season: bins of all goals, heaters too. */
export function strategySweptSection(
  swept: Swept | undefined,
  reviews: readonly BinReview[],
  units: Units,
): SectionBody {
  if (swept === undefined) return { lead: 'Can’t tell here: sweeps are read where a whole season is reviewed.' };
  if (swept.summary === null) return { lead: `Can’t tell. ${swept.why}` };
  const { summary } = swept;
  const bins = summary.plan.bins.map((planned) => ({
    planned,
    review: reviews.find(({ bin }) => bin.id === planned.id),
    told: summary.strategies.filter((one) => one.bin === planned.id && one.years > 0),
  }));
  const run = bins.filter(({ told }) => told.length > 0);
  const left = summary.leftOut.map(({ bin, weather, why }) => {
    const name = bins.find(({ planned }) => planned.id === bin)?.planned.name ?? bin;
    return `${name}${weather === 'all' ? '' : ` in ${weather === 'season' ? 'this season' : weather}`}: ${why}`;
  });
  if (run.length === 0) return { lead: 'Can’t tell: the sweep could run no bin.', notes: left };
  return {
    lead: leadOf(run, summary, units),
    entries: run.map((bin) => entryOf(bin, summary, units)),
    figures: [figureOf(run, units)],
    tables: [tableOf(run, summary, units)],
    notes: [
      `Each year is the same bin with the same grain, filled on the same date, in that year’s weather at this season’s prices. The middle year is the one by whose cost half of the years are cheaper; the range leaves out the cheapest and the dearest tenth of the years, of fewer than ${LEAST_YEARS} years none. Ranges hold what years differ by, not what the fit leaves open.`,
      summary.regretAgainst === IN_HINDSIGHT
        ? 'Over best is the mean over the years in which the strategy reached its target, against the cheapest schedule found with that year’s weather known.'
        : 'Over best is the mean over the years in which the strategy reached its target, against the cheapest strategy that reached it that year: no search in hindsight was swept.',
      ...left,
    ],
  };
}

/** How a number of one year alone is known. */
const MODEL = 'by the model';

const titleOf = (name: string, units: Units) => APART[name] ?? wayTitleOf(name, units) ?? name;
/** As it stands within a sentence; units keep their capitals. */
const small = (title: string) => title.charAt(0).toLowerCase() + title.slice(1);
const isApart = (id: string) => id === AS_LOGGED || id === IN_HINDSIGHT;
const chanceOf = ({ reached }: StrategyYears) => reached[0].chance ?? 0;

function yearsIn(bins: readonly SweptBin[]): number {
  return Math.max(...bins.flatMap(({ told }) => told.map(({ years }) => years)));
}

/** The strategy, nobody's log and no hindsight, that reaches most surely, and of these the cheapest in the middle year. */
function surest({ told }: SweptBin): StrategyYears | null {
  const rules = told.filter((one) => !isApart(one.strategy) && one.byCost.p50 !== null && chanceOf(one) > 0);
  rules.sort((a, b) => chanceOf(b) - chanceOf(a) || Number(a.byCost.p50?.value) - Number(b.byCost.p50?.value));
  return rules[0] ?? null;
}

function leadOf(run: readonly SweptBin[], { regretAgainst }: SweepSummary, units: Units): string {
  const picks = run.flatMap((bin) => {
    const pick = surest(bin);
    return pick === null ? [] : [`${bin.planned.name} by ${small(titleOf(pick.strategy, units))}`];
  });
  const found =
    picks.length === 0
      ? 'No strategy reaches its target in any year.'
      : `Most surely at target over the years, and of these for the least: ${listed(picks)}.`;
  const held = regretAgainst === IN_HINDSIGHT ? ', each held against the best schedule in hindsight of its year' : '';
  return `${found} By the sweep beside this season: ${counted(run.length, 'bin')} in the weather of ${counted(yearsIn(run), 'year')}${held}.`;
}

function entryOf(bin: SweptBin, { regretAgainst }: SweepSummary, units: Units): Entry {
  const pick = surest(bin);
  if (pick === null) return { term: bin.planned.name, text: 'No strategy reaches the target in any year.' };
  const { reached, years, chance } = pick.reached[0];
  const often = chance === 1 ? `in all ${years} years` : `in ${reached} of ${years} years`;
  const cost = units.say('money', moneyOf(pick));
  const regret =
    pick.regret.mean === null
      ? ''
      : ` On average that is ${units.say('money', pick.regret.mean)} over ${regretAgainst === IN_HINDSIGHT ? 'the best schedule in hindsight' : 'the cheapest that reached'}.`;
  return {
    term: bin.planned.name,
    text: `${titleOf(pick.strategy, units)} reaches the target ${often}, more surely than the others or for less: ${cost} in the middle year.${regret}`,
  };
}

/** Middle year with its range: tenth to ninetieth, of few years the outermost. */
function moneyOf({ byCost, cost }: StrategyYears): Estimate {
  // One year is its own middle: the log tells of this season alone.
  if (byCost.p50 === null && cost.years === 1) return { value: cost.mean, interval: null, why: null };
  if (byCost.p50 === null) return withheld(byCost.why ?? 'No year has a cost.');
  const [low, high] = byCost.p10 === null ? [cost.least, cost.most] : [byCost.p10.value, byCost.p90.value];
  return { value: byCost.p50.value, interval: low === null || high === null ? null : [low, high], why: null };
}

function costOf(one: StrategyYears, { planned, review }: SweptBin, units: Units): Estimate {
  const money = moneyOf(one);
  if (planned.bushels === null || review === undefined) return withheld('The bushels are not known.');
  return perGrain(scaled(money, 1 / planned.bushels), review, units);
}

function figureOf(run: readonly SweptBin[], units: Units): Figure {
  const [first] = run.flatMap((bin) => {
    const pick = surest(bin);
    return pick === null ? [] : [{ bin, pick }];
  });
  return waysAcrossBins(
    {
      id: 'costs',
      title:
        first === undefined
          ? 'No strategy reaches its target in any year'
          : `${first.bin.planned.name}, ${small(titleOf(first.pick.strategy, units))}: ${units.say('money', moneyOf(first.pick))} from year to year`,
      quantity: 'money per grain',
      bins: run.map((bin) => ({
        name: bin.planned.name,
        ways: bin.told.map((one) => ({
          name: titleOf(one.strategy, units),
          of: costOf(one, bin, units),
          misses: chanceOf(one) > 0.5 ? null : `${one.reached[0].reached} of ${one.years}`,
          own: isApart(one.strategy),
        })),
      })),
      words: {
        subtitle: 'by the model; as logged and the best in hindsight in bold',
        own: 'set apart',
        dot: 'middle year; target reached in more than half of the years',
        ring: 'in half of them at most: so many of how many',
        whisker:
          yearsIn(run) < LEAST_YEARS ? 'cheapest to dearest year' : 'one year in ten is cheaper, one in ten dearer',
      },
      notShown: null,
    },
    units,
  );
}

function tableOf(run: readonly SweptBin[], { regretAgainst }: SweepSummary, units: Units): Table {
  const over = regretAgainst === IN_HINDSIGHT ? 'Over best in hindsight' : 'Over best';
  return {
    id: 'swept',
    caption: 'Every strategy over the years',
    folded: true,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'way', label: 'Strategy', quantity: null },
      { key: 'years', label: 'Years', quantity: 'count' },
      { key: 'cost', label: 'Cost, middle year', quantity: 'money', known: MODEL },
      { key: 'grain', label: 'The same per grain', quantity: 'money per grain', known: MODEL },
      { key: 'chance', label: 'Years at target', quantity: 'share' },
      { key: 'over', label: over, quantity: 'money', known: MODEL },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: MODEL },
    ],
    rows: run.flatMap((bin) =>
      bin.told.map((one) => ({
        bin: bin.planned.name,
        way: titleOf(one.strategy, units),
        years: one.years,
        cost: moneyOf(one),
        grain: costOf(one, bin, units),
        chance: {
          value: one.reached[0].chance,
          interval: one.reached[0].chanceInterval,
          why: one.reached[0].chance === null ? 'No year was run.' : null,
        },
        over: ranged(one.regret, 'It reached its target in no year.'),
        hours: ranged(one.fanHours, 'No year was run.'),
      })),
    ),
  };
}

/** Mean, least and most over the years. */
function ranged({ mean, least, most }: StrategyYears['fanHours'], why: string): Cell {
  if (mean === null) return { value: null, why };
  return { value: mean, interval: least === null || most === null ? null : [least, most], why: null };
}
