import { DASH } from '../number-text.ts';
import type { Cell, Column } from '../page.ts';
import type { Units } from '../units.ts';

/** A cell worked into text: the same for the page and its CSV. */
export interface CellText {
  text: string;
  /** why it is a dash */
  why: string | null;
  /** decimals shown of a plain number, to line numbers up; null for text, dashes, intervals */
  decimals: number | null;
}

/** The middle of a cell that holds a number, else null. */
export function cellValue(cell: Cell | undefined): number | null {
  if (cell === undefined || cell === null || typeof cell === 'string') return null;
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : null;
  return cell.value;
}

export function cellText(cell: Cell | undefined, column: Column, units: Units): CellText {
  if (typeof cell === 'string') return { text: cell, why: null, decimals: null };
  // A row that leaves the column out has nothing to say there, as a total under names.
  if (cell === undefined) return { text: '', why: null, decimals: null };
  const value = cellValue(cell);
  if (value === null || column.quantity === null) {
    const why = typeof cell === 'object' && cell !== null && cell.why ? cell.why : 'Not known.';
    return { text: DASH, why, decimals: null };
  }
  if (typeof cell === 'number') {
    const decimals = Math.max(0, units.decimals(column.quantity, value));
    return { text: units.number(column.quantity, value), why: null, decimals };
  }
  return { text: units.amount(column.quantity, cell as never), why: null, decimals: null };
}
