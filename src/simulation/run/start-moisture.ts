import type { RunSpec } from './run-spec.ts';

/** Mean moisture that a run's grain starts with, fraction of dry matter; layers hold the same dry matter. */
export function startMoistureDb({ start, levels, bed }: RunSpec): number {
  if (start === undefined) return levels[0].moistureDb;
  const { layers, areaShares } = bed;
  const columns = start.moistureDb.length / layers;
  const share = (column: number) => areaShares?.[column] ?? 1 / columns;
  return start.moistureDb.reduce((sum, db, i) => sum + (share(Math.floor(i / layers)) * db) / layers, 0);
}
