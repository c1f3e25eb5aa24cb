import { saturationLogSlope, saturationPressurePa } from '../../air/saturation.ts';
import { cubicTable } from './cubic-table.ts';

/** Temperatures of the tables that a bed reads at one place. */
export const TEMP_RANGE_C = [-60, 90] as const;
export const TEMP_STEP_K = 0.25;
export const TEMP_INTERVALS = (TEMP_RANGE_C[1] - TEMP_RANGE_C[0]) / TEMP_STEP_K;

/** Saturation pressure over water, Pa: within a part in a million of `saturationPressurePa`. */
export const SATURATION = cubicTable(
  ...TEMP_RANGE_C,
  TEMP_INTERVALS,
  saturationPressurePa,
  (tempC) => saturationPressurePa(tempC) * saturationLogSlope(tempC),
);
