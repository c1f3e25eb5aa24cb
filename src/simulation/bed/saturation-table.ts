import { saturationLogSlope, saturationPressurePa } from '../../air/saturation.ts';
import { cubicTable } from './cubic-table.ts';

/** Temperatures of tables that a bed reads at one place, degC; a quarter of a degree apart. */
export const TEMP_RANGE_C = [-60, 90] as const;
export const TEMP_INTERVALS = 600;

/** Saturation pressure over water, Pa: within a part in a million of `saturationPressurePa`. */
export const SATURATION = cubicTable(
  ...TEMP_RANGE_C,
  TEMP_INTERVALS,
  saturationPressurePa,
  (tempC) => saturationPressurePa(tempC) * saturationLogSlope(tempC),
);
