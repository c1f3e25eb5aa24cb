/**
 * A smooth function as one cubic between each two of evenly spaced points, fitting its values and slopes there, for inner
 * loops, where a power or an exponential costs more than the rest of a step. In interval `i` the value is
 * c0 + u (c1 + u (c2 + u c3)), u from 0 to 1; the four stand beside each other.
 */
export interface CubicTable {
  low: number;
  /** intervals per unit of the argument */
  perUnit: number;
  /** the last place: a hair below the number of intervals */
  end: number;
  /** [intervals x 4], row-major */
  cubics: Float64Array;
}

/**
 * @param at         the function
 * @param slope      its derivative; left out: by central differences of a thousandth of an interval
 * @param intervals  at least 2
 */
export function cubicTable(
  low: number,
  high: number,
  intervals: number,
  at: (x: number) => number,
  slope?: (x: number) => number,
): CubicTable {
  const step = (high - low) / intervals;
  const derivative = slope ?? ((x: number) => (at(x + step / 1000) - at(x - step / 1000)) / (step / 500));
  const points = Array.from({ length: intervals + 1 }, (_, i) => low + i * step);
  const values = points.map(at);
  const slopes = points.map((x) => step * derivative(x));
  const cubics = new Float64Array(4 * intervals);
  for (let i = 0; i < intervals; i++) {
    const rise = values[i + 1] - values[i];
    const [from, to] = [slopes[i], slopes[i + 1]];
    cubics.set([values[i], from, 3 * rise - 2 * from - to, from + to - 2 * rise], 4 * i);
  }
  return { low, perUnit: 1 / step, end: intervals * (1 - 1e-12), cubics };
}

/** The function times a factor: its cubics are linear in the values that they fit. */
export function tableTimes(table: CubicTable, factor: number): CubicTable {
  return factor === 1 ? table : { ...table, cubics: table.cubics.map((one) => factor * one) };
}

/** Where an argument lies, in intervals; beyond the ends at the end. NaN stays NaN. The kernel, no checks. */
export function placeIn(table: CubicTable, x: number): number {
  return Math.max(0, Math.min(table.end, (x - table.low) * table.perUnit));
}

/**
 * The value, and the slope for each interval, at the part `u` of interval `i`: a place cut in two. The kernels, no checks, no
 * allocation. Kept this short since V8 inlines no more than 920 bytes of code into a function, and `passAir` takes sixteen.
 */
export function valueAt(cubics: Float64Array, i: number, u: number): number {
  const at = i << 2;
  return cubics[at] + u * (cubics[at + 1] + u * (cubics[at + 2] + u * cubics[at + 3]));
}

export function slopeAt(cubics: Float64Array, i: number, u: number): number {
  const at = i << 2;
  return cubics[at + 1] + u * (2 * cubics[at + 2] + 3 * u * cubics[at + 3]);
}

/** The table's value. The kernel, no checks, no allocation. */
export function cubicAt(table: CubicTable, x: number): number {
  const place = placeIn(table, x);
  const i = place | 0;
  return valueAt(table.cubics, i, place - i);
}
