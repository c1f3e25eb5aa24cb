import { AIR_SAMPLES } from './air-samples.ts';
import { BIN_SAMPLES } from './bin-samples.ts';
import { GRAIN_SAMPLES } from './grain-samples.ts';
import { LAYER_SAMPLES } from './layer-samples.ts';
import { MONEY_SAMPLES } from './money-samples.ts';
import type { Samples } from './sample.ts';

/** By the formula's id; every formula with equations is here. */
export const SAMPLES: Samples = {
  ...AIR_SAMPLES,
  ...GRAIN_SAMPLES,
  ...BIN_SAMPLES,
  ...MONEY_SAMPLES,
  ...LAYER_SAMPLES,
};
