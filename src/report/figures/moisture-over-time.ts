import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import type { ReadGrid } from '../read-grid.ts';
import type { Units } from '../units.ts';
import { draw, ownMark, readBox } from './draw.ts';
import { type FanDay, fanStrip, type LocalSpan, STRIP, timeAxis, timeScale } from './time-axis.ts';

/** Weighted mean moisture by local day; moistures are fractions, wet basis. */
export interface MoistureOverTime {
  id: string;
  title: string;
  days: readonly { dayMs: number; mean: number | null; low: number | null; high: number | null; stillAir: boolean }[];
  fanDays: readonly FanDay[];
  /** the windows that the start and end means come from, local ms */
  start: LocalSpan | null;
  end: LocalSpan | null;
  target: number | null;
}

const DAY_MS = 86_400_000;

interface Window {
  name: 'start' | 'end';
  from: Date;
  to: Date;
}

interface Day {
  still: boolean;
}

/** The bin's mean moisture through the season with the spread within the grain, the windows of start and end, and the fans above. */
export function moistureOverTime(data: MoistureOverTime, units: Units): Figure {
  const known = data.days.filter((day) => day.mean !== null);
  if (known.length === 0) throw new Error('no day has a mean moisture');
  const first = known[0].mean;
  const last = known.at(-1)?.mean ?? null;
  const left = data.days.length - known.length;
  return {
    id: data.id,
    title: data.title,
    subtitle: `Mean moisture of the grain, % wet basis, by day; fans above`,
    alt: `${data.title}. By day, measured: from ${units.say('moisture', first)} on the first of ${units.number('count', data.days.length)} days to ${units.say('moisture', last)} on the last.`,
    legend: [
      { label: 'fan stood still two hours or more', swatch: 'dot' },
      { label: 'fan ran: shows the passing air', swatch: 'ring' },
      { label: 'four fifths of the grain, driest to wettest tenth left out', swatch: 'band' },
      ...(data.target === null ? [] : [{ label: 'target', swatch: 'dash' }]),
      ...(data.start === null && data.end === null ? [] : [{ label: 'readings of start and end', swatch: 'whisker' }]),
    ],
    notShown: left === 0 ? null : `${left} of ${data.days.length} days not shown: no reading that could be used.`,
    grids: [gridOf(data, units)],
    draw: (size) => drawDays(data, units, size),
  };
}

/** What each day says: the mean, the spread, whether the air stood still. */
function gridOf({ days }: MoistureOverTime, units: Units): ReadGrid {
  const layer = (of: (day: MoistureOverTime['days'][number]) => number | null) => ({
    values: days.map((day) => {
      const value = of(day);
      return value === null ? Number.NaN : units.shown('moisture', value);
    }),
    decimals: 1,
  });
  return {
    columns: { fromMs: days[0].dayMs, stepMs: DAY_MS, count: days.length },
    rows: [{ label: '', low: 0, high: 1 }],
    say: 'mean $0 %, most of the grain $1 to $2 %, $3',
    none: 'no reading',
    layers: [
      layer((day) => day.mean),
      layer((day) => day.low),
      layer((day) => day.high),
      {
        values: days.map((day) => (day.stillAir ? 0 : 1)),
        decimals: 0,
        words: ['still air', 'fan running: the passing air'],
      },
    ],
  };
}

function drawDays(data: MoistureOverTime, units: Units, size: Size): string {
  const span: LocalSpan = { fromMs: data.days[0].dayMs, toMs: (data.days.at(-1)?.dayMs ?? 0) + DAY_MS };
  const pct = (value: number | null) => (value === null ? Number.NaN : units.shown('moisture', value));
  const rows = data.days.map((day) => ({
    at: new Date(day.dayMs + DAY_MS / 2),
    mean: pct(day.mean),
    low: pct(day.low),
    high: pct(day.high),
    still: day.stillAir,
  }));
  const all = rows.flatMap((row) => [row.mean, row.low, row.high]).filter((value) => !Number.isNaN(value));
  const target = data.target === null ? [] : [pct(data.target)];
  const low = Math.floor(Math.min(...all, ...target));
  const high = Math.ceil(Math.max(...all, ...target));
  const windows = (
    [
      ['start', data.start],
      ['end', data.end],
    ] as const
  ).flatMap(([name, of]): Window[] =>
    of === null ? [] : [{ name, from: new Date(of.fromMs), to: new Date(of.toMs) }],
  );
  const r = size.narrow ? 1.4 : 2.2;
  return draw(size, {
    height: size.narrow ? 260 : 340,
    marginTop: STRIP.top + STRIP.height + STRIP.gap + 14,
    marginLeft: size.narrow ? 34 : 96,
    marginRight: size.narrow ? 8 : 20,
    marginBottom: 28,
    x: timeScale(span),
    y: { domain: [low, Math.max(high, low + 1)], label: null, grid: true, ticks: 6 },
    marks: [
      Plot.areaY(rows, { x: 'at', y1: 'low', y2: 'high', fill: 'var(--rule)', fillOpacity: 0.35 }),
      Plot.ruleY(target, { strokeDasharray: '5 3' }),
      Plot.lineY(rows, { x: 'at', y: 'mean', strokeWidth: 1.5 }),
      Plot.dot(rows, { filter: (d: Day) => d.still, x: 'at', y: 'mean', r, fill: 'currentColor' }),
      Plot.dot(rows, {
        filter: (d: Day) => !d.still,
        x: 'at',
        y: 'mean',
        r,
        fill: 'var(--paper)',
        stroke: 'currentColor',
        strokeWidth: 0.8,
      }),
      Plot.ruleX(
        windows.flatMap((one) => [one.from, one.to]),
        { strokeWidth: 1 },
      ),
      ...windows.map((one) =>
        Plot.text([one], {
          x: (d: Window) => new Date((d.from.getTime() + d.to.getTime()) / 2),
          text: 'name',
          frameAnchor: 'top',
          dy: -12,
          textAnchor: one.name,
        }),
      ),
      timeAxis(span, size),
      fanStrip(data.fanDays, span, size),
      ownMark((frame) => [readBox(frame, 0)]),
    ],
  });
}
