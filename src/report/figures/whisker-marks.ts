import * as Plot from '@observablehq/plot';

/** A row of a figure of dots with whiskers. */
export interface WhiskerRow {
  key: string;
  value: number;
  low: number;
  high: number;
  /** a ring in place of a dot */
  open?: boolean;
  /** what pointer and keys read out at the dot */
  said?: string;
}

/** Line, ends and dot of each row, on the scales x (number) and y (key); `dy` moves them down, px. */
export function whiskerMarks(rows: readonly WhiskerRow[], step: number, dy: number): Plot.Markish[] {
  const inset = step / 2 - Math.min(8, step / 2 - 2);
  const spread = rows.filter((row) => row.high > row.low);
  const end = (x: 'low' | 'high') =>
    Plot.tickX(spread, { x, y: 'key', strokeWidth: 1.5, insetTop: inset, insetBottom: inset, dy });
  const r = Math.min(5, step / 4);
  return [
    Plot.link(spread, { x1: 'low', x2: 'high', y: 'key', strokeWidth: 2, dy } as never),
    end('low'),
    end('high'),
    Plot.dot(
      rows.filter((row) => !row.open),
      { x: 'value', y: 'key', r, fill: 'currentColor', dy, title: 'said' },
    ),
    Plot.dot(
      rows.filter((row) => row.open),
      { x: 'value', y: 'key', r, fill: 'var(--paper)', stroke: 'currentColor', strokeWidth: 1.5, dy, title: 'said' },
    ),
  ];
}
