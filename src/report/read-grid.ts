/**
 * Values behind a figure that a pointer or the arrow keys read out: a grid of columns and rows inside a drawn box, or a line with a
 * value a column. It travels in the page as text, packed: like neighbours once, whole numbers of the last decimal.
 */
export interface ReadGrid {
  /** what the grid is of, where a figure has several: a bin's name */
  name?: string;
  /** left edge of the first column as local ms and the width of each, or a word for each */
  columns: { fromMs: number; stepMs: number; count: number };
  /** from the lowest up: what each is called, and its edges as shares of the box's height */
  rows: readonly ReadRow[];
  /** the values of a column follow each other: hours of a day make longer runs that way */
  byColumn?: boolean;
  /** its rows are the hours of the day */
  hours?: boolean;
  /** `$0 °F`: what a cell says; `$0`, `$1` … are the layers */
  say: string;
  /** said where the first layer has no value */
  none: string;
  layers: readonly ReadLayer[];
}

export interface ReadRow {
  label: string;
  low: number;
  high: number;
}

export interface ReadLayer {
  /** row-major from the lowest row [rows x columns], or column by column where `byColumn`; NaN is not known. Indices where there are words. */
  values: ArrayLike<number>;
  decimals: number;
  words?: readonly string[];
}

/** Values as text: `163*40 162 -`, each times ten to the decimals, a run of the same with its length. */
export function packed(values: ArrayLike<number>, decimals: number): string {
  const out: string[] = [];
  const scale = 10 ** decimals;
  const token = (i: number) => (Number.isNaN(values[i]) ? '-' : String(Math.round(values[i] * scale)));
  for (let i = 0; i < values.length; ) {
    const from = i;
    const one = token(i);
    while (i < values.length && token(i) === one) i += 1;
    out.push(i - from === 1 ? one : `${one}*${i - from}`);
  }
  return out.join(' ');
}

/** What the page carries; the keys are short, as every figure has them. */
export function packedGrid(grid: ReadGrid): object {
  const { columns, rows } = grid;
  return {
    ...(grid.name === undefined ? {} : { name: grid.name }),
    from: columns.fromMs,
    step: columns.stepMs,
    count: columns.count,
    ...(grid.byColumn ? { down: 1 } : {}),
    // The 24 hours of a day are too common to be spelt out.
    ...(grid.hours ? {} : { rows: rows.map(({ label, low, high }) => [label, thousandths(low), thousandths(high)]) }),
    say: grid.say,
    none: grid.none,
    layers: grid.layers.map(({ values, decimals, words }) => ({
      v: packed(values, decimals),
      d: decimals,
      ...(words === undefined ? {} : { w: words }),
    })),
  };
}

function thousandths(share: number): number {
  return Math.round(share * 1000) / 1000;
}
