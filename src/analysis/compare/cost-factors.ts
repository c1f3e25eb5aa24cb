import type { CostFactor, CostFactors } from './comparison.ts';
import type { CostParts, UnsureParts } from './cost-parts.ts';
import { spreadOfPositive } from './spread.ts';

/** Each factor from the parts; their product is cost / bushels / points, whatever the parts are. */
export const FACTOR_OF: Readonly<Record<CostFactor, (parts: CostParts) => number>> = {
  price: (parts) => parts.energyCost / parts.energyKwh,
  charges: (parts) => parts.cost / parts.energyCost,
  power: (parts) => parts.energyKwh / parts.hours / parts.bushels,
  hours: (parts) => parts.hours / parts.points,
};

export const energyOf = (parts: CostParts) => parts.energyKwh / parts.bushels / parts.points;
export const costOf = (parts: CostParts) => parts.cost / parts.bushels / parts.points;

/** A bin's factors with their intervals. */
export function costFactors(parts: UnsureParts): CostFactors {
  const spread = (of: (parts: CostParts) => number) => spreadOfPositive([parts], of);
  return {
    price: spread(FACTOR_OF.price),
    charges: spread(FACTOR_OF.charges),
    power: spread(FACTOR_OF.power),
    hours: spread(FACTOR_OF.hours),
    energy: spread(energyOf),
  };
}
