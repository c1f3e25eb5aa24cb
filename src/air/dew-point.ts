import { assertRange } from '../base/errors.ts';
import { vapourPressurePa } from './humidity-ratio.ts';
import { saturationPressurePa } from './saturation.ts';

const COLDEST_C = -80;
const HOTTEST_C = 100;

/**
 * Dew point of air that holds this much water, over water also in frost.
 *
 * @param humidityRatio  kg water per kg dry air
 * @param pressurePa     total pressure, Pa, 30000 to 120000
 * @returns              degC, -80 to 100
 * @source               ashrae-2017, ch. 1: dew point as the solution of pws(td) = pw
 * @valid                throws RangeError where the dew point lies outside -80 to 100 degC
 */
export function dewPointOfRatioC(humidityRatio: number, pressurePa: number): number {
  assertRange('humidityRatio', humidityRatio, 0, 10);
  assertRange('pressurePa', pressurePa, 30000, 120000);
  const vapour = vapourPressurePa(humidityRatio, pressurePa);
  let low = COLDEST_C;
  let high = HOTTEST_C;
  assertRange('vapourPressurePa', vapour, saturationPressurePa(low), saturationPressurePa(high));
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (saturationPressurePa(middle) < vapour) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
