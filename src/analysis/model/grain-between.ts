import type { BinLog } from './bin-log.ts';
import { PAPERS, type PaperMoisture, type PaperMoistures } from './paper-moistures.ts';
import { standardErrors } from './standard-errors.ts';

/** Mean moisture of a bin less that at its cables, points, one cable; working assumption. */
const BETWEEN_POINTS = 0.3;

/** Where the end hangs on no air. */
const LEAST_SD = 1e-6;

/** The same of all cables: standard error, fraction, wet basis. */
export function betweenCablesSd({ cables }: Pick<BinLog, 'cables'>): number {
  return BETWEEN_POINTS / 100 / Math.sqrt(cables.length);
}

/** What the grain between the cables may hold more than that at them, fractions, wet basis: means and standard errors. */
export interface Between {
  /** as it was filled, at the start and at the end alike */
  filled: { mean: number; sd: number };
  /** because its air differs, at the end alone */
  aired: { mean: number; sd: number };
}

/** Scale tickets in and out; null: none, or none that tell of the whole bin. */
type Loads = Pick<PaperMoistures, 'start' | 'end'>;

/**
 * What is nearest to the loads, in and out, which are of the whole bin; without them the means.
 *
 * @param startWb, endWb  at the cables by the bed
 * @returns               sum of the two parts at the end
 */
export function nearestBetween(
  { filled, aired }: Between,
  startWb: number,
  endWb: number,
  { start, end }: Loads,
): number {
  // Least squares of two values: filled f, aired a.
  const weightOf = (one: PaperMoisture | null) => (one === null ? 0 : one.sd ** -2);
  const [ws, we] = [weightOf(start), weightOf(end)];
  const [wf, wa] = [filled.sd ** -2, Math.max(aired.sd, LEAST_SD) ** -2];
  const offStart = start === null ? 0 : start.wb - startWb;
  const offEnd = end === null ? 0 : end.wb - endWb;
  const [ff, fa, aa] = [wf + ws + we, we, wa + we];
  const [bf, ba] = [wf * filled.mean + ws * offStart + we * offEnd, wa * aired.mean + we * offEnd];
  const determinant = ff * aa - fa * fa;
  return (bf * aa - ba * fa + (ba * ff - bf * fa)) / determinant;
}

/**
 * Standard error of the bin's mean moisture at the end, fraction, wet basis: the fit's values, and the grain between the cables of
 * which the loads tell too.
 *
 * @param slopes            of the fit's residuals, [parameters][residuals]
 * @param startPer, endPer  slopes of the moisture at the cables, [parameters]
 */
export function binEndSd(
  slopes: readonly Float64Array[],
  startPer: readonly number[],
  endPer: readonly number[],
  { filled, aired }: Between,
  { start, end }: Loads,
): number {
  const rows = slopes[0].length;
  const [atStart, atEnd] = [rows - PAPERS, rows - PAPERS + 1];
  const per = (loads: PaperMoisture | null) => (loads === null ? 0 : 1 / loads.sd);
  const columnOf = (own: Float64Array | null, toStart: number, toEnd: number) => {
    const column = new Float64Array(rows + 2);
    if (own !== null) column.set(own);
    column[atStart] = toStart * per(start);
    column[atEnd] = toEnd * per(end);
    return column;
  };
  const filledColumn = columnOf(null, 1, 1);
  filledColumn[rows] = 1 / filled.sd;
  const airedColumn = columnOf(null, 0, 1);
  airedColumn[rows + 1] = 1 / Math.max(aired.sd, LEAST_SD);
  const columns = slopes.map((own, k) => columnOf(own, startPer[k], endPer[k]));
  return standardErrors([...columns, filledColumn, airedColumn])([...endPer, 1, 1]);
}
