import * as Plot from '@observablehq/plot';
import type { Size } from '../page.ts';
import { draw, typeSize } from './draw.ts';
import { type FreeFigure, TOGETHER } from './free-figure-data.ts';
import { spreadLabels } from './panel-grid.ts';
import { SIGN_WIDTH } from './spaced-labels.ts';
import { fanStrip, STRIP, timeAxis, timeScale } from './time-axis.ts';

const DASHES = ['none', '7 3', '2 3', '9 3 2 3', '12 2'] as const;
/** Signs of series, in ink; the legend draws them as `SIGN_SWATCHES` says. */
const SHAPES = ['circle', 'square', 'times', 'circle'] as const;
export const SIGN_SWATCHES = ['dot', 'square', 'cross', 'ring'] as const;

interface Row {
  x: number | string | Date;
  y: number;
  low: number;
  high: number;
  panel: number;
}

const PANEL_PX = { wide: 120, narrow: 96 } as const;

/** Time or a number across. */
export function drawAcross(data: FreeFigure, size: Size): string {
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
