import type { Stamps } from './stamps.ts';

/** A row whose wall clock shows one time at two instants. */
export interface Ambiguous {
  row: number;
  localMs: number;
}

/**
 * Which rows of one repeated hour belong to its second pass, by their order.
 *
 * A series says so itself where its clock steps back (or, once only, shows the same time twice). Where it does not, as with
 * a fan that switched once, the file may: when the hour's rows stand together and step back exactly once.
 *
 * @param stamps     the file's stamps
 * @param ambiguous  rows of the hour, oldest first (the caller turns a newest-first file round)
 * @returns          the rows of the second pass (standard time); all others are of the first (daylight time)
 */
export function secondPass(stamps: Stamps, ambiguous: readonly Ambiguous[]): Set<number> {
  const second = new Set<number>();
  const bySeries = new Map<number, Ambiguous[]>();
  for (const one of ambiguous) {
    const code = stamps.series[one.row];
    const rows = bySeries.get(code);
    if (rows === undefined) bySeries.set(code, [one]);
    else rows.push(one);
  }
  const fileSplit = splitOfFile(ambiguous);
  const place = new Map(ambiguous.map((one, i) => [one.row, i]));
  for (const rows of bySeries.values()) {
    const split = splitOf(rows);
    if (split !== null) for (const one of rows.slice(split)) second.add(one.row);
    else if (fileSplit !== null) for (const one of rows) if (place.get(one.row)! >= fileSplit) second.add(one.row);
  }
  return second;
}

/** Where the second pass begins: the widest step back; else the only repeat of a time. */
function splitOf(rows: readonly Ambiguous[]): number | null {
  let split: number | null = null;
  let widest = 0;
  const repeats: number[] = [];
  for (let i = 1; i < rows.length; i++) {
    const step = rows[i].localMs - rows[i - 1].localMs;
    if (step < widest) {
      widest = step;
      split = i;
    }
    if (step === 0) repeats.push(i);
  }
  if (split !== null) return split;
  return repeats.length === 1 && rows.length === 2 ? repeats[0] : null;
}

function splitOfFile(rows: readonly Ambiguous[]): number | null {
  const first = rows[0].row;
  const last = rows[rows.length - 1].row;
  if (Math.abs(last - first) + 1 !== rows.length) return null;
  const backs = rows.flatMap((one, i) => (i > 0 && one.localMs < rows[i - 1].localMs ? [i] : []));
  return backs.length === 1 ? backs[0] : null;
}
