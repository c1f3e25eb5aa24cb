/**
 * Values of a smooth function at evenly spaced points with its slopes, for cubic Hermite interpolation in inner loops, where
 * a power or an exponential costs more than the rest of a step. [points] each.
 */
export interface HermiteTable {
  low: number;
  /** points per unit of the argument */
  perUnit: number;
  values: Float64Array;
  /** slope times the distance of two points */
  slopes: Float64Array;
}

/**
 * @param at      the function
 * @param slope   its derivative; left out: by central differences of a thousandth of the step
 * @param points  at least 3
 */
export function hermiteTable(
  low: number,
  high: number,
  points: number,
  at: (x: number) => number,
  slope?: (x: number) => number,
): HermiteTable {
  const step = (high - low) / (points - 1);
  const values = new Float64Array(points);
  const slopes = new Float64Array(points);
  const derivative = slope ?? ((x: number) => (at(x + step / 1000) - at(x - step / 1000)) / (step / 500));
  for (let i = 0; i < points; i++) {
    values[i] = at(low + i * step);
    slopes[i] = derivative(low + i * step) * step;
  }
  return { low, perUnit: 1 / step, values, slopes };
}

/** The table's value; beyond its ends the value at the end. The kernel, no checks, no allocation. */
export function hermiteAt(table: HermiteTable, x: number): number {
  const { values, slopes } = table;
  const last = values.length - 1;
  const place = (x - table.low) * table.perUnit;
  if (!(place > 0)) return values[0];
  if (place >= last) return values[last];
  const i = place | 0;
  const u = place - i;
  const rise = values[i + 1] - values[i];
  const a = slopes[i] - rise;
  const b = rise - slopes[i + 1];
  return values[i] + u * (rise + (1 - u) * (a * (1 - u) + b * u));
}
