import type { Table } from '../report/page.ts';
import type { Compared } from './compare-words.ts';

/** From so many bins on their tables are folded, and left out on paper, where the figure and the statements stand. */
const MANY = 16;

/** How a table with a row for each of these bins is shown. */
export function foldedFor(bins: readonly Compared[]): Table['folded'] {
  return bins.length >= MANY ? 'on screen' : undefined;
}

/** What paper leaves out. */
export function manyNotes(bins: readonly Compared[]): string[] {
  return bins.length >= MANY
    ? [`The tables of all ${bins.length} bins are on screen and in tables/bins-compared-*.csv, not on paper.`]
    : [];
}
