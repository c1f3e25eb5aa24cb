import type { BinReview } from '../analysis/types.ts';
import {
  type Crossed,
  type CrossedBin,
  type CrossedCell,
  type CrossedPart,
  wasRun,
} from '../analysis/what-if/crossed-types.ts';
import { DOUBTS } from '../analysis/what-if/doubts.ts';
import { type Estimate, estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { waysAcrossBins } from '../report/figures/ways-across-bins.ts';
import type { Cell, Figure, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { perGrain } from './per-grain.ts';
import { counted } from './words.ts';

/** Bins of a goal, after “bins”. */
export const GOAL_SAID = {
  dry: 'to be dried',
  cool: 'to be cooled',
  condition: 'to be conditioned',
  hold: 'to be held',
};

/** Why bin and way can't be held against each other; null where they can. @param crossed  left out where models were */
export function crossedUntold(crossed: Crossed | undefined): string | null {
  if (crossed === undefined) return 'the runs of this comparison were left out or could not be made.';
  if (crossed.bins.every(({ cells }) => cells.length === 0))
    return 'no bin’s model can be trusted, so that no bin can be run in another’s way.';
  if (!crossed.bins.some(wasRun)) return `no way could be run on any bin. ${notRunWhys(crossed.bins).join(' ')}`;
  return crossed.bins.length < 2 ? 'there is no second bin to hold beside it.' : null;
}

/** Why none of the ways could be run on bins whose models are trusted. */
function notRunWhys(bins: readonly CrossedBin[]): string[] {
  return [...new Set(bins.flatMap(({ cells }) => cells.flatMap(({ perBushel }) => perBushel.why ?? [])))];
}

/** The ways that could be run on some bin. */
export function waysRun({ ways, bins }: Crossed): number {
  return ways.filter(({ id }) => bins.some(({ cells }) => cells.some((cell) => cell.wayId === id && cell.runs > 0)))
    .length;
}

/** Every bin's way on every bin's grain, so that a good bin is not mistaken for a good way to run it. */
export function matrixSection(crossed: Crossed | undefined, reviews: readonly BinReview[], units: Units): SectionBody {
  const untold = crossedUntold(crossed);
  const nameOf = (binId: string) => reviews.find(({ bin }) => bin.id === binId)?.bin.name ?? binId;
  const left = (crossed?.bins ?? []).filter((bin) => !wasRun(bin));
  const apart = left.map(
    (bin) =>
      `${nameOf(bin.binId)} is not among the bins run: ${bin.why ?? notRunWhys([bin])[0] ?? 'no reason is known.'}`,
  );
  if (crossed === undefined || untold !== null) return { lead: `Withheld: ${untold}`, notes: apart };
  return {
    lead: `${counted(crossed.bins.length - left.length, 'bin')} run in each of ${counted(waysRun(crossed), 'way')} in which this season’s bins were run, with the bin’s own grain, fan and air.`,
    figures: crossed.bins.some(({ cells }) => cells.some(({ perBushel }) => perBushel.value !== null))
      ? [crossedFigure(crossed, reviews, nameOf, units)]
      : [],
    tables: [crossedTable(crossed, reviews, nameOf, units)],
    notes: [
      'A strategy of the kit rests at the other bin’s own target. Logged hours of a bin that states none are carried by the clock; before and after that log the fan rests.',
      `Ranges are ${DOUBTS}; over its own way each run is held against the same run of the own way. A way that misses the target is no saving, whatever it costs.`,
      ...apart,
    ],
  };
}

/** What of the differences in cost goes with the bin and what with the way, by goal. */
export function againstSection(crossed: Crossed | undefined, reviews: readonly BinReview[], units: Units): SectionBody {
  const untold = crossedUntold(crossed);
  if (crossed === undefined || untold !== null) return { lead: `Withheld: ${untold}` };
  const nameOf = (binId: string) => reviews.find(({ bin }) => bin.id === binId)?.bin.name ?? binId;
  return {
    lead: 'Bins of one goal are held against each other, by the ways that bring each of them to its target: a way that is cheap because it leaves the grain wet is no cheap way.',
    entries: crossed.parts.map((part) => ({
      term: `Bins ${GOAL_SAID[part.goal]}`,
      text: partSaid(part, crossed, nameOf, units),
    })),
  };
}

/** Why no bin's cost in another's way can be set beside its own; null where one's can. */
export function notHeldWhy(bins: readonly Pick<CrossedBin, 'cells'>[]): string | null {
  const others = bins.flatMap(({ cells }) => cells.filter(({ own }) => !own));
  if (others.some(({ overOwn }) => overOwn.value !== null)) return null;
  return others[0]?.overOwn.why ?? 'All bins were run in one way.';
}

/** Bins in which another bin's way reaches the target, and costs less than the own, in every run: with the cheapest. */
export function cheaperElsewhere(
  bins: readonly Pick<CrossedBin, 'binId' | 'cells'>[],
): { binId: string; wayId: string }[] {
  return bins.flatMap(({ binId, cells }) => {
    const clear = cells.filter(
      ({ own, reached, reaching, runs, overOwn }) =>
        !own && reached === true && reaching === runs && Number(overOwn.interval?.[1] ?? 1) < 1,
    );
    clear.sort((a, b) => Number(a.overOwn.value) - Number(b.overOwn.value));
    return clear.slice(0, 1).map(({ wayId }) => ({ binId, wayId }));
  });
}

/** What bins differ by and what ways do, on one scale. */
function crossedFigure(
  { ways, bins }: Crossed,
  reviews: readonly BinReview[],
  nameOf: (binId: string) => string,
  units: Units,
): Figure {
  const known = bins.map(({ binId, cells }) => ({
    binId,
    cells: cells.filter((cell) => cell.perBushel.value !== null),
  }));
  const shown = known.filter(({ cells }) => cells.length > 0);
  const cheaper = cheaperElsewhere(shown);
  const left = bins.flatMap(({ binId, cells }) =>
    cells.length === 0 ? [] : cells.filter((cell) => cell.perBushel.value === null).map(() => binId),
  );
  const title = (id: string) => ways.find((way) => way.id === id)?.title ?? id;
  return waysAcrossBins(
    {
      id: 'costs',
      title:
        cheaper.length === 0
          ? notHeldWhy(shown) === null
            ? 'No other bin’s way that reaches the target costs clearly less than a bin’s own'
            : 'What each bin costs in each way'
          : `Another bin’s way reaches the target for clearly less in ${cheaper.length} of ${counted(shown.length, 'bin')}`,
      quantity: 'money per grain',
      bins: shown.map(({ binId, cells }) => ({
        name: nameOf(binId),
        ways: cells.map((cell) => ({
          name: title(cell.wayId),
          of: grainOf(cell.perBushel, binId, reviews, units),
          misses: cell.reached === true ? null : 'target not reached',
          own: cell.own,
        })),
      })),
      words: {
        subtitle: 'by the model; a bin’s own way in bold',
        own: 'its own',
        dot: 'reaches the target',
        ring: 'does not',
        whisker: DOUBTS,
      },
      notShown:
        left.length === 0 ? null : `${counted(left.length, 'run')} without a cost not shown; the table says why.`,
    },
    units,
  );
}

function grainOf(of: Estimate, binId: string, reviews: readonly BinReview[], units: Units): Estimate {
  const review = reviews.find(({ bin }) => bin.id === binId);
  return review === undefined ? of : perGrain(of, review, units);
}

/** One row for each way on each bin. */
function crossedTable(
  { ways, bins }: Crossed,
  reviews: readonly BinReview[],
  nameOf: (binId: string) => string,
  units: Units,
): Table {
  const grain = (of: Estimate, binId: string) => grainOf(of, binId, reviews, units);
  return {
    id: 'crossed',
    caption: 'Every bin’s way on every bin',
    columns: [
      { key: 'bin', label: 'Grain, fan and air of', quantity: null },
      { key: 'way', label: 'Run by', quantity: null },
      { key: 'of', label: 'As was run', quantity: null },
      { key: 'cost', label: 'Cost', quantity: 'money per grain' },
      { key: 'point', label: 'Cost per point', quantity: 'money per grain point' },
      { key: 'over', label: 'Over its own way', quantity: 'times' },
      { key: 'reaches', label: 'Reaches target', quantity: null },
    ],
    rows: bins.flatMap(({ binId, cells }) =>
      cells.map((cell, w) => ({
        bin: nameOf(binId),
        way: ways[w].title,
        of: cell.own ? 'itself' : listed(ways[w].binIds.map(nameOf)),
        cost: grain(cell.perBushel, binId),
        point: grain(cell.perBushelPoint, binId),
        over: cell.overOwn,
        reaches: reachesSaid(cell),
      })),
    ),
  };
}

function reachesSaid({ reached, reaching, runs }: CrossedCell): Cell {
  if (reached === null) return { value: null, why: 'It was not run.' };
  return `${reached ? 'yes' : 'no'}, ${reaching} of ${runs} runs`;
}

/** The shares of bin, way and neither, with what the doubted runs leave open of them. */
export function sharesSaid(
  { split, ranges }: { split: NonNullable<CrossedPart['split']>; ranges: CrossedPart['ranges'] },
  units: Units,
): Record<'bin' | 'way' | 'neither', string> {
  const said = (of: 'rows' | 'columns' | 'rest') => {
    const value = split.share[of];
    const [low, high] = ranges?.[of] ?? [value, value];
    return units.say('share of difference', estimate(value, low, high));
  };
  return { bin: said('rows'), way: said('columns'), neither: said('rest') };
}

function partSaid(
  { split, ranges, binIds, wayIds, why }: CrossedPart,
  { ways }: Crossed,
  nameOf: (id: string) => string,
  units: Units,
) {
  if (split === null) return `Bin and way can’t be told apart. ${why ?? ''}`;
  const { rows, columns } = split;
  const { bin, way, neither } = sharesSaid({ split, ranges }, units);
  const how =
    ranges === null
      ? 'as run by the model, without a range'
      : 'by the model; ranges are lowest and highest of its runs';
  const title = (id: string) => ways.find((way) => way.id === id)?.title.toLowerCase() ?? id;
  const times = (of: readonly number[]) => units.say('times', Math.exp(Math.max(...of) - Math.min(...of)));
  const most = (of: readonly number[]) => of.indexOf(Math.max(...of));
  const least = (of: readonly number[]) => of.indexOf(Math.min(...of));
  return `Over ${counted(binIds.length, 'bin')} and the ${counted(wayIds.length, 'way')} that reach the target in each, the bin makes ${bin} of the differences in cost, the way ${way}, and ${neither} is neither’s alone (${how}). ${nameOf(binIds[most(rows)])} costs ${times(rows)} what ${nameOf(binIds[least(rows)])} does, “${title(wayIds[most(columns)])}” ${times(columns)} what “${title(wayIds[least(columns)])}” does.`;
}
