import type { Ticket } from '../moisture/tickets.ts';

/** Dry matter in and out may differ by this much before some load is missing: scales, meters, handling loss, respiration. */
const DRY_MATTER_FIT = 0.04;

/** The loads out hold what came in. */
export function dryMatterFits(dryOutKg: number, dryInKg: number): boolean {
  return Math.abs(dryOutKg / dryInKg - 1) <= DRY_MATTER_FIT;
}

/** Dry matter of loads, kg; NaN where one has no weight or no moisture. */
export function dryMatterSum(loads: readonly Ticket[]): number {
  return loads.reduce((sum, one) => sum + one.netKg * (1 - one.moistureWb), 0);
}
