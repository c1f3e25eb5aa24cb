import { hermiteAt } from './hermite-table.ts';
import type { Medium } from './medium.ts';

/** Heat held by grain, J per kg of dry matter, counted from dry grain and liquid water at 0 degC. The kernel, no checks. */
export function grainHeatJKg(medium: Medium, tempC: number, moistureDb: number): number {
  const { heatDryJKgK, heatPerMoistureJKgK, binding } = medium;
  return (heatDryJKgK + heatPerMoistureJKgK * moistureDb) * tempC - hermiteAt(binding, moistureDb);
}

/** Relative humidity of the air in balance with the grain, fraction. The kernel, no checks. */
export function grainHumidity(medium: Medium, tempC: number, moistureDb: number): number {
  const z = hermiteAt(medium.byTemp, tempC) * hermiteAt(medium.byMoisture, moistureDb);
  switch (medium.equation) {
    case 'modified Henderson':
      return 1 - Math.exp(-z);
    case 'modified Oswin':
      return 1 / (1 + z);
    default:
      return Math.exp(-z);
  }
}
