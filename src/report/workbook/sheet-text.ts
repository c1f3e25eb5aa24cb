import { guarded } from '../../base/csv-text.ts';
import type { SheetCell } from './sheet.ts';

/** Longest text of a cell (common practice of programs that open it, from memory; ECMA-376 part 1, 18.3.1.4 leaves it open). */
const LONGEST_TEXT = 32_767;

/**
 * A text as a cell of a workbook takes it: half characters become U+FFFD, `_x0041_` is kept from being read as an escape
 * (ECMA-376 part 1, 22.9.2.19), and what is too long for a cell ends with an ellipsis; its CSV has the whole.
 */
export function sheetText(text: string): string {
  const whole = text.replace(/\p{Surrogate}/gu, '\uFFFD');
  const kept = whole.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
  return kept.length <= LONGEST_TEXT ? kept : `${kept.slice(0, LONGEST_TEXT - 1)}…`;
}

/** A text in the body of a sheet; one that would open a formula stays text when it is edited, too. */
export function textCell(text: string): SheetCell {
  return { value: text, style: guarded(text) === text ? 'body' : 'guarded' };
}
