import { LEAST_YEARS } from '../analysis/strategies/percentile-years.ts';
import { IN_HINDSIGHT } from '../analysis/strategies/run-strategy.ts';
import type { StrategyYears } from '../analysis/strategies/strategy-years.ts';
import type { LeftOut, SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { Swept } from '../analysis/strategies/swept.ts';
import type { BinReview } from '../analysis/types.ts';
import type { BinWhatIf } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import { waysAcrossBins } from '../report/figures/ways-across-bins.ts';
import type { Entry, Figure, SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import {
  chanceOf,
  grainOf,
  isApart,
  moneyOf,
  type SweptBin,
  small,
  surest,
  sweptBins,
  titleOf,
  weatherSaid,
  yearsIn,
} from './swept-bins.ts';
import { chanceTable, daySaid, namedYearsTable, overYearsTable, spreadTable } from './swept-tables.ts';
import { counted } from './words.ts';

/** A rule that misses some years is told of where it costs less than this part of the surest. Our choice. */
const LESS = 0.9;

/**
 * What every strategy costs in other years, by the sweep that stands beside the season: bins of all goals, heaters too.
 *
 * @param whatIf  of the review, whose best in hindsight of this season is drawn where the sweep searched none
 */
export function strategySweptSection(
  swept: Swept | undefined,
  reviews: readonly BinReview[],
  units: Units,
  whatIf: readonly BinWhatIf[] = [],
): SectionBody {
  if (swept === undefined) return { lead: 'Can’t tell here: sweeps are read where a whole season is reviewed.' };
  if (swept.summary === null) return { lead: `Can’t tell. ${swept.why}` };
  const { summary } = swept;
  const run = sweptBins(summary, reviews);
  const left = leftSaid(summary);
  if (run.length === 0) return { lead: 'Can’t tell: the sweep could run no bin.', notes: left };
  return {
    lead: leadOf(run, summary, units),
    entries: run.map((bin) => entryOf(bin, summary, units)),
    figures: [figureOf(run, summary, whatIf, units)],
    tables: [
      overYearsTable(run, summary, units),
      namedYearsTable(run, units),
      spreadTable(run, units),
      chanceTable(run, units),
    ],
    notes: [
      `Each year is the same bin with the same grain, filled on the same date, in that year’s weather at this season’s prices. Good, middle and poor are years by cost alone: half of the years are cheaper than the middle one, a tenth cheaper than the good one, a tenth dearer than the poor one; of fewer than ${LEAST_YEARS} years only the middle one is told, with the cheapest and the dearest as its range. Ranges hold what years differ by, not what the fit leaves open; those of shares are 90 % intervals for so many years.`,
      summary.regretAgainst === IN_HINDSIGHT
        ? 'Over best is the mean over the years in which the strategy reached its target, against the cheapest schedule found with that year’s weather known.'
        : 'Over best is the mean over the years in which the strategy reached its target, against the cheapest strategy that reached it that year: no search in hindsight was swept. npm run sweep -- and the season folder searches too, some seconds for each bin and year.',
      ...left,
    ],
  };
}

/** What could not be run: a year that no bin has, once, with one bin's reason. */
function leftSaid({ plan, leftOut }: SweepSummary): string[] {
  const name = ({ bin }: LeftOut) => plan.bins.find(({ id }) => id === bin)?.name ?? bin;
  const weathers = [...new Set(leftOut.map(({ weather }) => weather))];
  return weathers.flatMap((weather) => {
    const all = leftOut.filter((one) => one.weather === weather);
    const when = weather === 'all' ? '' : ` in ${weatherSaid(weather)}`;
    if (weather !== 'all' && all.length > 1 && all.length === plan.bins.length)
      return [`No bin could be run${when}. ${name(all[0])}: ${all[0].why}`];
    return all.map((one) => `${name(one)}${when}: ${one.why}`);
  });
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
  const [{ reached, years, chance }, ...days] = pick.reached;
  const often = chance === 1 ? `in all ${years} years` : `in ${reached} of ${years} years`;
  const half = days.find((one) => Number(one.chance) > 0.5);
  const soon =
    half?.by == null ? '' : ` (in ${half.reached === reached ? 'all' : half.reached} of them by ${daySaid(half.by)})`;
  const { p10, p50, p90 } = pick.byCost;
  const year = (of: { weather: string; value: number }) =>
    `${weatherSaid(of.weather)} (${units.say('money', of.value)})`;
  const ends = p10 === null ? '' : ` A good year was ${year(p10)}, a poor one ${year(p90)}.`;
  const regret =
    pick.regret.mean === null
      ? ''
      : pick.regret.most === 0
        ? ' In none of these years did another come there for less.'
        : ` On average it cost ${units.say('money', pick.regret.mean)} over ${regretAgainst === IN_HINDSIGHT ? 'the best schedule in hindsight' : 'the cheapest that reached'}.`;
  return {
    term: bin.planned.name,
    text: `${titleOf(pick.strategy, units)} reaches the target ${often}${soon}, more surely than the others or for less: ${units.say('money', moneyOf(pick))} in the middle year, ${weatherSaid(p50?.weather ?? '')}.${ends}${regret}${cheaperSaid(bin, pick, units)}`,
  };
}

/** The cheapest rule that reaches in most years, where it misses some and costs less: a reader may take that chance. */
function cheaperSaid({ told }: SweptBin, pick: StrategyYears, units: Units): string {
  const middle = ({ byCost }: StrategyYears) => byCost.p50?.value ?? Number.POSITIVE_INFINITY;
  const often = told.filter((one) => !isApart(one.strategy) && chanceOf(one) > 0.5 && chanceOf(one) < chanceOf(pick));
  const [first] = often.filter((one) => middle(one) < LESS * middle(pick)).sort((a, b) => middle(a) - middle(b));
  if (first === undefined) return '';
  const [{ reached, years }] = first.reached;
  return ` ${titleOf(first.strategy, units)} does in ${reached} of ${years} years, for ${units.say('money', moneyOf(first))}.`;
}

/** The best schedule in hindsight of this season, by the review. */
function hindsightOf(bin: SweptBin, whatIf: readonly BinWhatIf[], units: Units) {
  const best = whatIf.find(({ binId }) => binId === bin.planned.id)?.hindsight ?? null;
  if (best === null) return [];
  return [
    {
      name: `${titleOf(IN_HINDSIGHT, units)}, this season`,
      of: grainOf(best.cost, bin, units),
      misses: best.outcome.reachedTarget ? null : '0 of 1',
      own: true,
    },
  ];
}

function figureOf(
  run: readonly SweptBin[],
  { regretAgainst }: SweepSummary,
  whatIf: readonly BinWhatIf[],
  units: Units,
): Figure {
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
        ways: [
          ...bin.told.map((one) => ({
            name: titleOf(one.strategy, units),
            of: grainOf(moneyOf(one), bin, units),
            misses: chanceOf(one) > 0.5 ? null : `${one.reached[0].reached} of ${one.years}`,
            own: isApart(one.strategy),
          })),
          ...(regretAgainst === IN_HINDSIGHT ? [] : hindsightOf(bin, whatIf, units)),
        ],
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
