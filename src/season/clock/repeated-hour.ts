import { rowsBySeries, type Stamps, usualStepMs } from './stamps.ts';

/** A row whose wall clock shows one time at two instants. */
export interface Ambiguous {
  row: number;
  localMs: number;
}

/**
 * Which rows of one repeated hour belong to its second pass, by their order.
 *
 * A series says so itself where its clock steps back (or, in an hourly log, shows one time twice). Where it does not, as with
 * a fan that switched once, the file may: when the hour's rows stand together and step back exactly once.
 *
 * @param stamps     the file's stamps
 * @param ambiguous  rows of the hour, oldest first (the caller turns a newest-first file round)
 * @returns          the rows of the second pass (standard time); all others are of the first (daylight time)
 */
export function secondPass(stamps: Stamps, ambiguous: readonly Ambiguous[]): Set<number> {
  const second = new Set<number>();
  const fileSplit = splitOfFile(ambiguous);
  const place = new Map(ambiguous.map((one, i) => [one.row, i]));
  for (const run of runsOf(stamps, ambiguous)) {
    const split = splitOf(run.rows, run.stepMs);
    if (split !== null) for (const one of run.rows.slice(split)) second.add(one.row);
    else if (fileSplit !== null) for (const one of run.rows) if (place.get(one.row)! >= fileSplit) second.add(one.row);
  }
  return second;
}

interface Run {
  rows: Ambiguous[];
  /** usual step of the series, ms */
  stepMs: number;
}

/** The hour's rows of each series, cut where other rows of the series stand between: an export appended below has its own two passes. */
function runsOf(stamps: Stamps, ambiguous: readonly Ambiguous[]): Run[] {
  const all = rowsBySeries(stamps);
  const rank = new Map<number, number>();
  const series = new Set(ambiguous.map((one) => stamps.series[one.row]));
  const runs: Run[] = [];
  for (const code of series) {
    all[code].forEach((row, i) => {
      rank.set(row, i);
    });
    const stepMs = usualStepMs(all[code].map((row) => stamps.ms[row]));
    let run: Run | null = null;
    let before = Number.NaN;
    for (const one of ambiguous) {
      if (stamps.series[one.row] !== code) continue;
      const at = rank.get(one.row)!;
      if (run === null || Math.abs(at - before) !== 1) {
        run = { rows: [], stepMs };
        runs.push(run);
      }
      run.rows.push(one);
      before = at;
    }
  }
  return runs;
}

/** Where the second pass begins: at the widest step back; else, in a log read hourly or oftener that shows one time only, half-way. */
function splitOf(rows: readonly Ambiguous[], stepMs: number): number | null {
  let split: number | null = null;
  let widest = 0;
  for (let i = 1; i < rows.length; i++) {
    const step = rows[i].localMs - rows[i - 1].localMs;
    if (step < widest) {
      widest = step;
      split = i;
    }
  }
  if (split !== null) return split;
  const oneTime = rows.every((one) => one.localMs === rows[0].localMs);
  const seldom = stepMs > 3_600_000;
  return oneTime && !seldom && rows.length % 2 === 0 ? rows.length / 2 : null;
}

function splitOfFile(rows: readonly Ambiguous[]): number | null {
  const first = rows[0].row;
  const last = rows[rows.length - 1].row;
  if (Math.abs(last - first) + 1 !== rows.length) return null;
  const backs = rows.flatMap((one, i) => (i > 0 && one.localMs < rows[i - 1].localMs ? [i] : []));
  return backs.length === 1 ? backs[0] : null;
}
