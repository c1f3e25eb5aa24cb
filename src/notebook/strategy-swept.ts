import { LEAST_YEARS } from '../analysis/strategies/percentile-years.ts';
import { IN_HINDSIGHT } from '../analysis/strategies/run-strategy.ts';
import type { SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { Swept } from '../analysis/strategies/swept.ts';
import type { BinReview } from '../analysis/types.ts';
import type { BinWhatIf } from '../analysis/what-if/what-if-types.ts';
import { waysAcrossBins } from '../report/figures/ways-across-bins.ts';
import type { Figure, SectionBody } from '../report/page.ts';
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
  yearsIn,
} from './swept-bins.ts';
import { chanceTable, namedYearsTable, overYearsTable, spreadTable } from './swept-tables.ts';
import { leftOutSaid, notSweptSaid, sweptEntry, sweptLead } from './swept-words.ts';

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
  const left = leftOutSaid(summary);
  if (run.length === 0) return { lead: 'Can’t tell: the sweep could run no bin.', notes: left };
  return {
    lead: `${sweptLead(run, summary, units)}${notSweptSaid(summary, reviews, units)}`,
    entries: run.map((bin) => sweptEntry(bin, summary, units)),
    // Without a price nothing is there to draw.
    figures: run.some(({ told }) => told.some(({ cost }) => cost.mean !== null))
      ? [figureOf(run, summary, whatIf, units)]
      : [],
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
      ...(run.some(({ told }) => told.some(({ cost }) => cost.years === 2))
        ? ['Two years have no middle one: of these the mean stands, from the cheaper to the dearer.']
        : []),
      ...left,
    ],
  };
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
    return pick === null || !pick.priced ? [] : [{ bin, pick }];
  });
  return waysAcrossBins(
    {
      id: 'costs',
      title:
        first === undefined
          ? 'What each strategy costs from year to year'
          : `${first.bin.planned.name}, ${small(titleOf(first.pick.one.strategy, units))}: ${units.say('money per grain', grainOf(moneyOf(first.pick.one), first.bin, units))}${yearsIn(run) === 1 ? '' : ' from year to year'}`,
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
        dot: yearsIn(run) === 1 ? 'target reached' : 'middle year; target reached in more than half of the years',
        ring: yearsIn(run) === 1 ? 'not reached' : 'in half of them at most: so many of how many',
        whisker:
          yearsIn(run) < LEAST_YEARS ? 'cheapest to dearest year' : 'one year in ten is cheaper, one in ten dearer',
      },
      notShown: null,
    },
    units,
  );
}
