import type { HourPieces } from './hour-pieces.ts';
import type { Judged } from './judged-hours.ts';

/** Hours whose code is `code`, as a sum for `spanned`. */
export function hoursWhere(
  { hours }: HourPieces,
  codesOf: (one: Judged) => Uint8Array,
  code: number,
  also: (one: Judged, i: number) => boolean = () => true,
): (one: Judged) => number {
  return (one) => {
    const codes = codesOf(one);
    return hours.reduce((sum, value, i) => sum + (codes[i] === code && also(one, i) ? value : 0), 0);
  };
}

export function sumWhere({ hours }: HourPieces, where: (i: number) => boolean): number {
  return hours.reduce((sum, value, i) => sum + (where(i) ? value : 0), 0);
}

export function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
