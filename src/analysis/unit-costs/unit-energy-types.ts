import type { Estimate } from '../../base/estimate.ts';

/** How a bin's use of energy stands beside published figures of natural-air drying. */
export interface EnergyPlausibility {
  /** where the interval lies: in the range, wholly outside, or across an end of it; null where nothing can be held beside it */
  stands: 'within' | 'below' | 'above' | 'across' | null;
  /** whole sentences: how it stands and, where it lies outside, what most likely makes it so */
  text: readonly string[];
  sourceKeys: readonly string[];
  /** true: so far below that the fan log, or the fan's power, is to be doubted; left out else */
  doubtsLog?: true;
}

/** Fan energy for what drying did; a heater's fuel is not in it. */
export interface UnitEnergy {
  kwhPerPoint: Estimate;
  kwhPerBushelPoint: Estimate;
  /** for each kilogram of water that left by the sensors */
  kwhPerKgWater: Estimate;
  plausible: EnergyPlausibility;
  /** one sentence for the block */
  why: string | null;
}
