import type { BinReview } from '../../../src/analysis/types.ts';
import { type Estimate, estimate } from '../../../src/base/estimate.ts';
import { exampleInput } from '../../report/example-review.ts';

export interface MadeBin {
  id?: string;
  name?: string;
  crop?: string;
  goal?: BinReview['bin']['goal'];
  fanIds?: readonly string[];
  hours?: Estimate;
  energyKwh?: Estimate;
  energyCost?: Estimate;
  cost?: Estimate;
  energyFrom?: BinReview['fan']['energyFrom'];
  points?: Estimate;
  bushels?: number;
  bushelsInterval?: [number, number];
  /** the measured cost, per bushel-point or per bushel */
  unitCost?: Estimate;
}

export const exact = (value: number): Estimate => estimate(value, value, value);

const [base] = exampleInput().review.bins;

/** A bin whose numbers are those given; the rest is the example's. */
export function madeBin(of: MadeBin): BinReview {
  const id = of.id ?? 'B1';
  const unit = of.unitCost ?? exact(0.03);
  return {
    ...base,
    bin: {
      ...base.bin,
      id,
      name: of.name ?? id,
      goal: of.goal ?? 'dry',
      fanIds: of.fanIds ?? [`F${id}`],
      grain: { ...base.bin.grain, crop: of.crop ?? 'corn' },
    },
    grain: { ...base.grain, bushels: of.bushels ?? 10_000, bushelsInterval: of.bushelsInterval ?? null },
    fan: {
      ...base.fan,
      hours: of.hours ?? exact(500),
      energyKwh: of.energyKwh ?? exact(5000),
      energyCost: of.energyCost ?? exact(500),
      cost: of.cost ?? exact(900),
      energyFrom: of.energyFrom ?? 'meter',
      costPerBushel: unit,
    },
    moisture: { ...base.moisture, pointsRemoved: of.points ?? exact(3) },
    unitCosts: { ...base.unitCosts, perBushelPoint: unit, perBushelPointAdded: unit },
  };
}
