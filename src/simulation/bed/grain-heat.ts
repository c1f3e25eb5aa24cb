import { cubicAt } from './cubic-table.ts';
import type { Medium } from './medium.ts';

/** Heat held by grain, J per kg of dry matter, counted from dry grain and liquid water at 0 degC. The kernel, no checks. */
export function grainHeatJKg(medium: Medium, tempC: number, moistureDb: number): number {
  const { heatDryJKgK, heatPerMoistureJKgK, binding } = medium;
  return (heatDryJKgK + heatPerMoistureJKgK * moistureDb) * tempC - cubicAt(binding, moistureDb);
}
