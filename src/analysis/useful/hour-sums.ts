import type { HourPieces } from './hour-pieces.ts';

export function sumWhere({ hours }: HourPieces, where: (i: number) => boolean): number {
  return hours.reduce((sum, value, i) => sum + (where(i) ? value : 0), 0);
}

export function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
