/** Air temperatures in time order, readings not believed left out; both arrays are [readings]. */
export interface AirLog {
  timeMs: Float64Array;
  tempC: Float64Array;
}

/**
 * Air readings in good standing from rows of the plenum or weather table.
 *
 * @param rows  columns `time`, `temp_c` and `flags` of rowsWhere, time order
 */
export function airLog(rows: Readonly<Record<string, Float64Array>>): AirLog {
  const { time, temp_c: temp, flags } = rows;
  const good = [...time.keys()].filter((row) => !Number.isNaN(temp[row]) && !(flags?.[row] > 0));
  return {
    timeMs: Float64Array.from(good, (row) => time[row]),
    tempC: Float64Array.from(good, (row) => temp[row]),
  };
}
