import { dewPointC, relativeHumidity } from '../../air/humidity.ts';
import type { TableBuilder } from './table-builder.ts';

/** Outside these the formulas do not hold, and the reading is left to the checks. */
const TEMP_C: readonly [number, number] = [-60, 60];
const within = (value: number) => value >= TEMP_C[0] && value <= TEMP_C[1];

/** Where a weather row has only one of relative humidity and dew point, work the other out (both over water). Given values stay as they are. */
export function fillHumidity(weather: TableBuilder): void {
  const temp = weather.number('temp_c');
  const rh = weather.number('rh');
  const dew = weather.number('dew_point_c');
  for (let row = 0; row < weather.rows; row++) {
    if (!within(temp[row])) continue;
    if (Number.isNaN(rh[row]) && within(dew[row])) weather.setNumber('rh', row, relativeHumidity(temp[row], dew[row]));
    else if (Number.isNaN(dew[row]) && rh[row] >= 0.01 && rh[row] <= 1.05) {
      weather.setNumber('dew_point_c', row, dewPointC(temp[row], rh[row]));
    }
  }
}
