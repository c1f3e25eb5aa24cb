import * as Plot from '@observablehq/plot';
import { monthText } from '../date-text.ts';
import type { Figure, Size } from '../page.ts';
import { draw, typeSize } from './draw.ts';
import { spreadLabels } from './panel-grid.ts';
import { SIGN_WIDTH } from './spaced-labels.ts';
import { type FanDay, fanStrip, type LocalSpan, STRIP, timeAxis, timeScale } from './time-axis.ts';

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
const TOGETHER = { line: 5, dots: 4, bars: 5 } as const;
const DASHES = ['none', '7 3', '2 3', '9 3 2 3', '12 2'] as const;
/** In ink, as the legend draws them. */
const SHAPES = ['circle', 'square', 'times', 'circle'] as const;
const SWATCHES = ['dot', 'square', 'cross', 'ring'] as const;

export function freeFigure(data: FreeFigure): Figure {
  const { id, title, subtitle, alt, notShown, series, form, level } = data;
  const shapes = form === 'dots' && series.length > 1 && series.length <= TOGETHER.dots;
  return {
    id,
    title,
    subtitle,
    alt,
    notShown,
    legend: [
      ...(shapes ? series.map(({ name }, i) => ({ label: name ?? '', swatch: SWATCHES[i] })) : []),
      ...(level === null ? [] : [{ label: level.label, swatch: 'dash' }]),
      ...(hasIntervals(data) ? [{ label: data.ranges, swatch: form === 'line' ? 'band' : 'whisker' }] : []),
    ],
    draw: (size) => (data.x.kind === 'words' ? drawBars(data, data.x.order, size) : drawAcross(data, size)),
  };
}

function hasIntervals({ series }: FreeFigure): boolean {
  return series.some(({ points }) => points.some(({ low }) => low !== null));
}

interface Row {
  x: number | string | Date;
  y: number;
  low: number;
  high: number;
  panel: number;
}

const PANEL_PX = { wide: 120, narrow: 96 } as const;

/** Time or a number across. */
function drawAcross(data: FreeFigure, size: Size): string {
  const { series, x, form, level, fanDays } = data;
  const panels = series.length > TOGETHER[form];
  const rows = series.map(({ points }, panel) =>
    points.map((point): Row => {
      const at = x.kind === 'time' ? new Date(point.x as number) : point.x;
      return { x: at, y: point.y, low: point.low ?? point.y, high: point.high ?? point.y, panel };
    }),
  );
  const { low, high } = domainOf(rows.flat(), level, form === 'bars');
  const named = !panels && series.length > 1 && form === 'line';
  const longest = Math.max(0, ...series.map(({ name }) => name?.length ?? 0));
  const type = typeSize(size);
  // Panels leave the fans out: each would have to carry them.
  const strip = x.kind === 'time' && fanDays !== null && !panels ? STRIP.top + STRIP.height + STRIP.gap : 0;
  const height = panels
    ? strip + 40 + series.length * (size.narrow ? PANEL_PX.narrow : PANEL_PX.wide)
    : strip + (size.narrow ? 240 : 310);
  const margins = {
    marginTop: strip + 12 + (panels ? type : 0),
    marginBottom: x.kind === 'time' ? 28 : 44,
    marginLeft: size.narrow ? 44 : fanDays === null ? 56 : 96,
    marginRight: named ? Math.min(size.width / 3, 12 + longest * SIGN_WIDTH * type) : size.narrow ? 8 : 20,
  };
  const facet = panels ? { fy: 'panel' } : {};
  return draw(size, {
    height,
    ...margins,
    x:
      x.kind === 'time'
        ? timeScale(x.span)
        : { label: x.kind === 'number' ? `${x.label} →` : null, ticks: size.narrow ? 4 : 8 },
    y: { domain: [low, high], label: null, grid: true, ticks: panels ? 3 : 6 },
    ...(panels ? { fy: { axis: null, padding: 0.18 } } : {}),
    marks: [
      ...rows.flatMap((of, i) => seriesMarks(data, of, i, panels, size, facet)),
      level === null ? null : Plot.ruleY([level.at], { strokeDasharray: '5 3' }),
      low <= 0 && high >= 0 && form === 'bars' ? Plot.ruleY([0]) : null,
      named ? endLabels(data, rows, { low, high }, height - margins.marginTop - margins.marginBottom, type) : null,
      panels
        ? series.map(({ name }, panel) =>
            Plot.text([{ panel }], { fy: 'panel', text: () => name ?? '', frameAnchor: 'top-left', dy: -type - 2 }),
          )
        : null,
      x.kind === 'time' ? timeAxis(x.span, size) : null,
      x.kind === 'time' && fanDays !== null && !panels ? fanStrip(fanDays, x.span, size) : null,
    ] as never,
  });
}

function domainOf(rows: readonly Row[], level: FreeFigure['level'], fromZero: boolean): { low: number; high: number } {
  const all = rows.flatMap(({ y, low, high }) => [y, low, high]).filter((value) => !Number.isNaN(value));
  let low = fromZero ? 0 : Number.POSITIVE_INFINITY;
  let high = fromZero ? 0 : Number.NEGATIVE_INFINITY;
  for (const value of [...all, ...(level === null ? [] : [level.at])]) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const room = (high - low || Math.abs(high) || 1) * 0.05;
  return { low: fromZero && low === 0 ? 0 : low - room, high: high + room };
}

function seriesMarks(data: FreeFigure, rows: readonly Row[], i: number, panels: boolean, size: Size, facet: object) {
  const alone = panels || data.series.length === 1;
  const stroke = alone ? 'currentColor' : `var(--c${i + 1})`;
  const interval = rows.some(({ low, high, y }) => low !== y || high !== y);
  if (data.form === 'line') {
    return [
      interval
        ? Plot.areaY(rows, { x: 'x', y1: 'low', y2: 'high', fill: stroke, fillOpacity: 0.15, ...facet } as never)
        : null,
      Plot.lineY(rows, {
        x: 'x',
        y: 'y',
        stroke,
        strokeWidth: 1.6,
        strokeDasharray: alone ? 'none' : DASHES[i],
        ...facet,
      } as never),
      // A value between two gaps has no line to show it.
      Plot.dot(lonely(rows), { x: 'x', y: 'y', r: 1.5, fill: stroke, ...facet } as never),
    ];
  }
  const shown = rows.filter(({ y }) => !Number.isNaN(y));
  const whiskers = interval ? [Plot.ruleX(shown, { x: 'x', y1: 'low', y2: 'high', ...facet } as never)] : [];
  if (data.form === 'bars') {
    return [Plot.ruleX(shown, { x: 'x', y1: 0, y2: 'y', stroke, strokeWidth: 3, ...facet } as never), ...whiskers];
  }
  const r = size.narrow ? 2 : 3;
  const look = { symbol: alone ? 'circle' : SHAPES[i], fill: alone || i === 0 ? 'currentColor' : 'none' };
  return [Plot.dot(shown, { x: 'x', y: 'y', r, stroke: 'currentColor', ...look, ...facet } as never), ...whiskers];
}

function lonely(rows: readonly Row[]): Row[] {
  const there = (i: number) => rows[i] !== undefined && !Number.isNaN(rows[i].y);
  return rows.filter((_, i) => there(i) && !there(i - 1) && !there(i + 1));
}

/** Each line's name at its last value, moved apart where two end together. */
function endLabels(
  { series }: FreeFigure,
  rows: readonly (readonly Row[])[],
  { low, high }: { low: number; high: number },
  frameHeightPx: number,
  type: number,
) {
  const ends = rows.map((of) => of.filter(({ y }) => !Number.isNaN(y)).at(-1));
  const told = series.flatMap(({ name }, i) => {
    const end = ends[i];
    return end === undefined ? [] : [{ name: name ?? '', i, end }];
  });
  const px = (y: number) => ((high - y) / (high - low)) * frameHeightPx;
  const placed = spreadLabels(
    told.map(({ end }) => px(end.y)),
    type + 1,
  );
  return told.map(({ name, i, end }, k) =>
    Plot.text([end], {
      x: 'x',
      y: 'y',
      text: () => name,
      textAnchor: 'start',
      dx: 6,
      dy: placed[k] - px(end.y),
      fill: `var(--c${i + 1})`,
    } as never),
  );
}

/** Words down the side, a bar or a dot for each; of several series each word has one beside the other. */
function drawBars(data: FreeFigure, order: readonly string[], size: Size): string {
  const several = data.series.length > 1;
  const type = typeSize(size);
  const rows = data.series.flatMap(({ name, points }) =>
    points
      .filter(({ y }) => !Number.isNaN(y))
      .map((point) => ({
        word: String(point.x),
        series: name ?? '',
        y: point.y,
        low: point.low ?? point.y,
        high: point.high ?? point.y,
        text: `${several && name !== null ? `${name}: ` : ''}${data.said(point.y)}`,
      })),
  );
  const dots = data.form === 'dots';
  const ends = rows.flatMap(({ low, high }) => [low, high]);
  const least = Math.min(0, ...ends, ...(data.level === null ? [] : [data.level.at]));
  const most = Math.max(0, ...ends, ...(data.level === null ? [] : [data.level.at])) || (least < 0 ? 0 : 1);
  const nameOf = (word: string) => (/^\d{4}-\d{2}$/.test(word) ? monthText(word) : word);
  const longest = Math.max(0, ...order.map((word) => nameOf(word).length));
  const said = Math.max(0, ...rows.map(({ text }) => text.length));
  const step = (several ? 22 * data.series.length + 14 : size.narrow ? 34 : 32) + (size.narrow ? type : 0);
  const place = several ? { fy: 'word', y: 'series' } : { y: 'word' };
  return draw(size, {
    height: order.length * step + 60,
    marginLeft: size.narrow ? 8 : Math.min(280, 16 + longest * type * SIGN_WIDTH),
    marginRight: Math.min(size.width / 3, 16 + said * type * SIGN_WIDTH),
    marginTop: size.narrow ? 8 + type : 8,
    marginBottom: 46,
    x: { domain: [least, most], label: null, grid: true, ticks: size.narrow ? 3 : 7 },
    y: {
      domain: several ? data.series.map(({ name }) => name ?? '') : [...order],
      axis: null,
      padding: size.narrow ? 0.5 : 0.3,
    },
    ...(several ? { fy: { domain: [...order], axis: null, padding: size.narrow ? 0.3 : 0.15 } } : {}),
    marks: [
      dots
        ? Plot.dot(rows, { x: 'y', ...place, r: 4.5, fill: 'currentColor' } as never)
        : Plot.barX(rows, {
            x: 'y',
            ...place,
            fillOpacity: 0.7,
            fill: several ? (d: { series: string }) => fillOf(data, d.series) : 'var(--c1)',
          } as never),
      hasIntervals(data) ? Plot.ruleY(rows, { x1: 'low', x2: 'high', ...place, strokeWidth: 1.5 } as never) : null,
      Plot.ruleX([0]),
      data.level === null ? null : Plot.ruleX([data.level.at], { strokeDasharray: '5 3' }),
      Plot.text(rows, { x: 'high', ...place, text: 'text', textAnchor: 'start', dx: 8 } as never),
      size.narrow
        ? Plot.text(
            order.map((word) => ({ word })),
            {
              ...(several ? { fy: 'word', frameAnchor: 'top-left' } : { x: least, y: 'word' }),
              text: (d: { word: string }) => nameOf(d.word),
              textAnchor: 'start',
              dy: several ? -type / 2 - 2 : -step / 2 + 5,
            } as never,
          )
        : several
          ? Plot.axisFy({ tickSize: 0, label: null, anchor: 'left', tickFormat: nameOf } as never)
          : Plot.axisY({ tickSize: 0, label: null, tickFormat: nameOf }),
    ] as never,
  });
}

function fillOf({ series }: FreeFigure, name: string): string {
  return `var(--c${(series.findIndex((one) => one.name === name) % TOGETHER.bars) + 1})`;
}
