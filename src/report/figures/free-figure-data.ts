import type { FanDay, LocalSpan } from './time-axis.ts';

/** A value with or without its interval, in the shown unit; NaN leaves a gap. */
export interface FreePoint {
  /** local ms, a number, or a word, as `x` says */
  x: number | string;
  y: number;
  low: number | null;
  high: number | null;
}

/** What a notebook draws by short orders: one quantity against time, a number or words, as lines, dots or bars. */
export interface FreeFigure {
  id: string;
  title: string;
  subtitle: string;
  alt: string;
  notShown: string | null;
  form: 'line' | 'dots' | 'bars';
  x:
    | { kind: 'time'; span: LocalSpan }
    | { kind: 'number'; label: string }
    | { kind: 'words'; order: readonly string[] };
  /** name null: there is one series alone */
  series: readonly { name: string | null; points: readonly FreePoint[] }[];
  /** a dashed line across, as a target; its words stand in the legend */
  level: { at: number; label: string } | null;
  /** the fans above a time axis; null: none */
  fanDays: readonly FanDay[] | null;
  /** what the ranges are, where there are any */
  ranges: string;
  /** value as said beside a bar */
  said(value: number): string;
}

/** Series that one frame holds; more are panels under each other. */
export const TOGETHER = { line: 5, dots: 4, bars: 5 } as const;

export function hasIntervals({ series }: FreeFigure): boolean {
  return series.some(({ points }) => points.some(({ low }) => low !== null));
}
