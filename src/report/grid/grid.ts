import type { Zone } from '../../base/zone.ts';
import type { TimeKind } from '../page.ts';

/** A cell of a table's file: a number by its digits on the page (`-1230.5`), times as ms UTC, a month as `2024-10`. */
export type GridCell =
  | { kind: 'text'; text: string }
  | { kind: 'number'; digits: string }
  | { kind: 'day' | 'moment'; utcMs: number }
  | { kind: 'month'; month: string };

/**
 * What a column tells of its page's column: the number or word itself, an end of its interval, the offset from UTC of a local
 * time that autumn shows twice, or why numbers of the row are missing.
 */
export type GridPart = 'value' | 'low' | 'high' | 'offset' | 'why';

export interface GridColumn {
  /** the page's label with how its numbers are known: `Fan hours, measured` */
  name: string;
  /** empty where there is none */
  unit: string;
  part: GridPart;
  time: TimeKind | null;
  /** one a row; null where there is nothing */
  cells: readonly (GridCell | null)[];
}

/** A page's table as files hold it: cells that know what they are, at the digits of the page. */
export interface Grid {
  columns: readonly GridColumn[];
  rows: number;
  /** the last row sums the others up */
  hasTotal: boolean;
  zone: Zone;
}
