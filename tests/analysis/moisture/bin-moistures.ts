import { concludeMoisture, spreadOfOthers } from '../../../src/analysis/moisture/bin-moisture.ts';
import { type BinMoistureInput, observeMoisture } from '../../../src/analysis/moisture/observed-moisture.ts';
import type { BinMoisture } from '../../../src/analysis/types.ts';

/** Moisture of a season's bins, each with the spread between cables that the others show, as a review works it out. */
export function binMoistures(inputs: readonly BinMoistureInput[]): BinMoisture[] {
  const observed = inputs.map(observeMoisture);
  return observed.map((one) => concludeMoisture(one, spreadOfOthers(one, observed)));
}
