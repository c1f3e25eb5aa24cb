/** What a cell looks like; its number format comes beside. Heads stand where their column's cells do: of numbers on the right. */
export type CellStyle =
  | 'name'
  | 'number name'
  | 'unit'
  | 'number unit'
  | 'body'
  | 'time'
  | 'guarded'
  | 'link'
  | 'total';

export interface SheetCell {
  /** text, or a number; times as days since 30 December 1899 by the clock of the site */
  value: string | number;
  /** a number format of ECMA-376; text and whole counts need none */
  format?: string;
  style: CellStyle;
  /** `#'moisture-bins'!A1` within the workbook, else an address beside it */
  link?: string;
  tip?: string;
}

/** A worksheet: two rows of header, names and units, then the rows. */
export interface Sheet {
  name: string;
  rows: readonly (readonly (SheetCell | null)[])[];
  /** widest that a column of text gets, in characters */
  widest: number;
}

/** Rows that stay in sight: names and units. */
export const HEADER_ROWS = 2;
