import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
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
  assertRange('vapourPressurePa', vapour, saturationPressurePa(COLDEST_C), saturationPressurePa(HOTTEST_C));
  return halve(COLDEST_C, HOTTEST_C, (middle) => saturationPressurePa(middle) < vapour);
}
