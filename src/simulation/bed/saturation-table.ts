import { saturationLogSlope, saturationPressurePa } from '../../air/saturation.ts';
import { hermiteTable } from './hermite-table.ts';

/** Saturation pressure over water, Pa, -60 to 90 degC: within a part in a million of `saturationPressurePa`. */
export const SATURATION = hermiteTable(
  -60,
  90,
  601,
  saturationPressurePa,
  (tempC) => saturationPressurePa(tempC) * saturationLogSlope(tempC),
);
