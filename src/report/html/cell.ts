import { monthText } from '../date-text.ts';
import { DASH } from '../number-text.ts';
import type { Cell, Column, OwnNumber } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Amount, Units } from '../units.ts';

/** A cell worked into text. */
export interface CellText {
  text: string;
  /** `2.0 to 2.6` where an interval is said */
  range: string;
  /** why it is a dash */
  why: string | null;
  /** decimals shown of a number, to line numbers of one kind up; null for text, dashes, numbers of several kinds */
  decimals: number | null;
}

function isOwn(cell: Cell | undefined): cell is OwnNumber {
  return typeof cell === 'object' && cell !== null && 'of' in cell;
}

/** What a cell holds as a number, and what it is of; null for text, times and what is missing. */
export function cellNumber(cell: Cell | undefined, column: Column): { quantity: Quantity; amount: Amount } | null {
  const { quantity } = column;
  if (cell === undefined || cell === null || typeof cell === 'string') return null;
  if (isOwn(cell)) return middleOf(cell.amount) === null ? null : { quantity: cell.of, amount: cell.amount };
  if (quantity === null || quantity === 'own' || isTime(quantity)) return null;
  return middleOf(cell as Amount) === null ? null : { quantity, amount: cell as Amount };
}

export function isTime(quantity: Column['quantity']): quantity is 'day' | 'moment' | 'month' {
  return quantity === 'day' || quantity === 'moment' || quantity === 'month';
}

/** The middle of a number with or without interval. One that is not finite is no missing one: showing it throws. */
export function middleOf(amount: Amount): number | null {
  return typeof amount === 'object' && amount !== null ? amount.value : amount;
}

/** Why a cell holds nothing. */
function whyOf(cell: Cell | undefined): string {
  const of = isOwn(cell) ? cell.amount : cell;
  return typeof of === 'object' && of !== null && 'why' in of && of.why ? of.why : 'Not known.';
}

const plain = (text: string): CellText => ({ text, range: '', why: null, decimals: null });

export function cellText(cell: Cell | undefined, column: Column, units: Units): CellText {
  // A row that leaves the column out has nothing to say there, as a total under names.
  if (cell === undefined) return plain('');
  if (typeof cell === 'string') return plain(column.quantity === 'month' && cell !== '' ? monthOrText(cell) : cell);
  if (typeof cell === 'number' && column.quantity === 'day') return plain(units.date(cell));
  if (typeof cell === 'number' && column.quantity === 'moment') return plain(units.dateTime(cell));
  const found = cellNumber(cell, column);
  if (found === null) return { text: DASH, range: '', why: whyOf(cell), decimals: null };
  const { quantity, amount } = found;
  const value = middleOf(amount) as number;
  return {
    text: units.number(quantity, value),
    range: typeof amount === 'object' && amount !== null ? units.interval(quantity, amount) : '',
    why: null,
    decimals: column.quantity === 'own' ? null : Math.max(0, units.decimals(quantity, value)),
  };
}

/** A total's row names itself where the others tell their month. */
function monthOrText(cell: string): string {
  return /^\d{4}-\d{2}$/.test(cell) ? monthText(cell) : cell;
}
