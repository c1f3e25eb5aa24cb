import { aimsAtTemperature } from '../../season/goal.ts';
import type { Goal } from '../../season/season.ts';

/** Warming of the air by fan and motor where no plenum reading tells it, K. */
export interface StatedWarming {
  usualK: number;
  /** what it may be instead */
  rangeK: readonly [number, number];
  /** how far off it is taken to be either way where hours are classed, small fans warming less than published ones */
  offK: number;
}

/**
 * Fans that dry.
 *
 * @source NDSU Extension: 3 to 5 degF at 4 to 6 in. of water; near its lower end, since fans at lower pressure warm less
 */
const DRYING: StatedWarming = { usualK: 2, rangeK: [3 / 1.8, 5 / 1.8], offK: 1 };

/** Fans that cool: those figures make 0.8 degF an inch of water, and aeration's low airflow meets one to three inches (common practice). */
const AERATION: StatedWarming = { usualK: 0.8, rangeK: [0.8 / 1.8, 2.4 / 1.8], offK: 0.5 };

/** Warming of the air where the plenum does not tell it, by what the bin's fans are there for. */
export function statedWarming(goal: Goal): StatedWarming {
  return aimsAtTemperature(goal) ? AERATION : DRYING;
}
