import type { ColumnPlan } from './farm-types.ts';

/** Poorly aired core under the spreader, a middle in four quarters, a wall ring in a sunny and a shaded half. */
export function rings(radiusFt: number, coreFt: number, coreAir: number, quarters: readonly number[]): ColumnPlan[] {
  const wallFt = radiusFt - 2.5;
  return [
    { id: 'core', fromFt: 0, toFt: coreFt, share: 1, air: coreAir },
    ...['north', 'east', 'south', 'west'].map((id, i) => ({
      id,
      fromFt: coreFt,
      toFt: wallFt,
      share: 0.25,
      air: quarters[i],
    })),
    { id: 'wall-south', fromFt: wallFt, toFt: radiusFt, share: 0.5, air: 1.06, sun: 1 },
    { id: 'wall-north', fromFt: wallFt, toFt: radiusFt, share: 0.5, air: 1.05, sun: 0.12 },
  ];
}

/** Heights, ft, or whatever else stands at one spacing. */
export const run = (first: number, spacing: number, count: number) =>
  Array.from({ length: count }, (_, i) => first + spacing * i);
