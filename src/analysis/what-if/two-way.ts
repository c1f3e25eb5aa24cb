import { mean } from 'simple-statistics';

/** A full table of numbers parted into a mean, an effect of each row, an effect of each column, and what neither explains. */
export interface TwoWay {
  mean: number;
  /** [rows], sum 0 */
  rows: readonly number[];
  /** [columns], sum 0 */
  columns: readonly number[];
  /** shares of the sum of squares about the mean; they add up to 1, all 0 where the table is even */
  share: { rows: number; columns: number; rest: number };
}

/**
 * Additive parts of a full two-way table by least squares; in a full table they are the means of rows and columns.
 *
 * @param cells  [rows x columns], row-major
 * @param width  number of columns
 * @source   textbook two-way analysis of variance without repeats
 */
export function twoWay(cells: readonly number[], width: number): TwoWay {
  const height = cells.length / width;
  if (!Number.isInteger(height) || height < 1 || cells.some((cell) => !Number.isFinite(cell))) {
    throw new RangeError(`a full table of finite numbers is due; ${cells.length} cells, ${width} columns were given`);
  }
  const all = mean([...cells]);
  const rows = Array.from({ length: height }, (_, r) => mean(cells.slice(r * width, (r + 1) * width)) - all);
  const columns = Array.from({ length: width }, (_, c) => mean(cells.filter((_, i) => i % width === c)) - all);
  const total = squares(cells.map((cell) => cell - all));
  const ofRows = width * squares(rows);
  const ofColumns = height * squares(columns);
  const rest = squares(cells.map((cell, i) => cell - all - rows[Math.floor(i / width)] - columns[i % width]));
  const part = (of: number) => (total === 0 ? 0 : of / total);
  return { mean: all, rows, columns, share: { rows: part(ofRows), columns: part(ofColumns), rest: part(rest) } };
}

const squares = (of: readonly number[]) => of.reduce((sum, one) => sum + one * one, 0);
