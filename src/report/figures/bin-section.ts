import * as Plot from '@observablehq/plot';
import type { Figure, LegendItem, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { ReadGrid } from '../read-grid.ts';
import type { Units } from '../units.ts';
import { boxPath, draw, type Frame, hatch, ownMark, px, readBox } from './draw.ts';
import { SCHEMES, type SchemeName } from './schemes.ts';
import { type FanDay, fanStrip, type LocalSpan, STRIP, timeAxis, timeScale } from './time-axis.ts';

/** A bin through time: cells of height and time, all values SI; NaN is a cell without a reading. */
export interface BinSection {
  id: string;
  title: string;
  quantity: Extract<Quantity, 'temperature' | 'moisture'>;
  /** left edges of the columns, local ms, evenly spaced [columns] */
  columnMs: readonly number[];
  columnWidthMs: number;
  /** floor to surface [rows], m; each row from low to high */
  rows: readonly { lowM: number; highM: number }[];
  /** [rows x columns], row-major */
  values: Float64Array;
  /** levelled surface from a moment on, local ms, rising */
  surface: readonly { fromMs: number; depthM: number }[];
  fanDays: readonly FanDay[];
  /** shown; all; and of those not shown the ones that were read while the bin held no grain */
  readings: { shown: number; of: number; empty: number };
}

const STEPS = 7;

/** Even steps of the shown unit that cover the values: edges [steps + 1]. */
function edgesOf(low: number, high: number): number[] {
  const rough = (high - low) / STEPS || 1;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 2.5, 5, 10].find((one) => one * power >= rough) ?? 10) * power;
  const first = Math.floor(low / step + 1e-9);
  const count = Math.max(1, Math.ceil(high / step - 1e-9) - first);
  return Array.from({ length: count + 1 }, (_, i) => (first + i) * step);
}

/** Lowest and highest that 1 % and 99 % of the values pass, so that one odd reading does not bleach the map. */
function coreRange(values: readonly number[]): [number, number] {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))];
  return [at(0.01), at(0.99)];
}

function edgeText(value: number): string {
  return String(Math.round(value * 10) / 10).replace('-', '−');
}

/** Temperature or moisture of a bin as a section through time: floor at the bottom, surface at the top, fans as a strip above. */
export function binSection(data: BinSection, units: Units): Figure {
  const { quantity, readings } = data;
  const shown = Float64Array.from(data.values, (value) => units.shown(quantity, value));
  const finite = Array.from(shown).filter((value) => !Number.isNaN(value));
  const unit = units.unit(quantity);
  const name = quantity === 'temperature' ? 'Temperature' : 'Moisture';
  if (finite.length === 0) throw new Error(`no ${name.toLowerCase()} reading could be drawn`);
  const [low, high] = coreRange(finite);
  const edges = edgesOf(low, high);
  const classes = edges.length - 1;
  const scheme: SchemeName = quantity === 'temperature' ? 'cividis' : 'yellow-green-blue';
  const colours = Array.from({ length: classes }, (_, i) => SCHEMES[scheme](classes === 1 ? 0.5 : i / (classes - 1)));
  const legend: LegendItem[] = colours.map((swatch, i) => ({
    swatch,
    edges: [edgeText(edges[i]), edgeText(edges[i + 1])],
    label: `${edgeText(edges[i])} to ${edgeText(edges[i + 1])} ${unit}`,
  }));
  const left = readings.of - readings.shown;
  const top = topOf(data);
  return {
    id: data.id,
    title: data.title,
    subtitle: `${name}, ${unit}, by height above the floor (${units.unit('length')}) and day; fans above`,
    alt: `${name} of the bin by height and day: mostly between ${units.number(quantity, toSi(low, quantity, units))} and ${units.number(quantity, toSi(high, quantity, units))} ${unit}.`,
    legend: [...legend, { label: 'no reading', swatch: 'hatch' }, { label: 'surface of the grain', swatch: 'dash' }],
    notShown:
      left === 0
        ? null
        : `${units.number('count', left)} of ${units.number('count', readings.of)} readings not shown: ${whyLeft(left, readings.empty, units)}.`,
    grids: [gridOf(data, shown, top, units)],
    draw: (size) => drawSection({ ...data, values: shown }, { edges, colours }, units, size),
  };
}

function whyLeft(left: number, empty: number, units: Units): string {
  const lacking = 'missing, or not believed';
  if (empty === 0) return lacking;
  if (empty === left) return 'the bin held no grain';
  return `${units.number('count', empty)} while the bin held no grain, the others ${lacking}`;
}

function topOf(data: BinSection): number {
  return Math.max(...data.rows.map((row) => row.highM), ...data.surface.map((step) => step.depthM));
}

/** Each cell's value with its height and day. */
function gridOf(data: BinSection, shown: Float64Array, topM: number, units: Units): ReadGrid {
  const { columnMs, columnWidthMs, quantity } = data;
  return {
    columns: { fromMs: columnMs[0], stepMs: columnWidthMs, count: columnMs.length },
    rows: data.rows.map(({ lowM, highM }) => ({
      label: `${units.number('length', lowM)} to ${units.number('length', highM)} ${units.unit('length')}`,
      low: lowM / topM,
      high: highM / topM,
    })),
    say: `$0 ${units.unit(quantity)}`,
    none: 'no reading',
    layers: [{ values: shown, decimals: quantity === 'temperature' ? 0 : 1 }],
  };
}

/** Back from the shown unit, for text at the page's digits. */
function toSi(shown: number, quantity: Quantity, units: Units): number {
  const zero = units.shown(quantity, 0);
  return (shown - zero) / (units.shown(quantity, 1) - zero);
}

interface Classes {
  edges: readonly number[];
  colours: readonly string[];
}

function classOf(value: number, { edges, colours }: Classes): number {
  const step = edges[1] - edges[0];
  return Math.min(colours.length - 1, Math.max(0, Math.floor((value - edges[0]) / step)));
}

function drawSection(data: BinSection, classes: Classes, units: Units, size: Size): string {
  const { columnMs, columnWidthMs } = data;
  const span: LocalSpan = { fromMs: columnMs[0], toMs: columnMs[columnMs.length - 1] + columnWidthMs };
  const top = topOf(data);
  return draw(size, {
    height: size.narrow ? 250 : 340,
    marginTop: STRIP.top + STRIP.height + STRIP.gap,
    marginLeft: size.narrow ? 34 : 96,
    marginRight: size.narrow ? 6 : 12,
    marginBottom: 28,
    x: timeScale(span),
    y: { domain: [0, units.shown('length', top)], label: null, ticks: 5 },
    marks: [
      cells(data, classes, units, size),
      timeAxis(span, size),
      heightAxis(units.shown('length', top), units.unit('length')),
      fanStrip(data.fanDays, span, size),
      surfaceLine(data, span, units),
    ],
  });
}

/** Round heights from the floor up; the highest says the unit. */
function heightAxis(top: number, unit: string) {
  const step = [0.5, 1, 2, 5, 10, 20].find((one) => top / one <= 6) ?? 50;
  const marks = Array.from({ length: Math.floor(top / step) + 1 }, (_, i) => i * step);
  const label = (at: number) => (at === marks.at(-1) ? `${at} ${unit}` : String(at));
  return Plot.axisY(marks, { tickFormat: label, label: null, color: 'currentColor' } as Plot.AxisYOptions);
}

/** Cells of one class that touch along a row are one box; all boxes of a class are one path. */
function cells(data: BinSection, classes: Classes, units: Units, size: Size) {
  return ownMark((frame: Frame) => {
    const columns = data.columnMs.length;
    const paths = classes.colours.map(() => '');
    let none = '';
    data.rows.forEach((row, r) => {
      const y1 = frame.y(units.shown('length', row.lowM));
      const y2 = frame.y(units.shown('length', row.highM));
      const at = (c: number) => {
        const value = data.values[r * columns + c];
        return Number.isNaN(value) ? -1 : classOf(value, classes);
      };
      for (let c = 0; c < columns; ) {
        const from = c;
        const found = at(c);
        while (c < columns && at(c) === found) c += 1;
        const box = boxPath(
          frame.x(new Date(data.columnMs[from])),
          y2,
          frame.x(new Date(data.columnMs[c - 1] + data.columnWidthMs)),
          y1,
        );
        if (found === -1) none += box;
        else paths[found] += box;
      }
    });
    const id = `${size.idPrefix}-none`;
    return [
      hatch(frame, id),
      frame.element('path', { d: none, fill: `url(#${id})` }),
      // A hair of stroke in the same colour closes the seams that renderers leave between boxes.
      ...paths.map((d, i) =>
        frame.element('path', { d, fill: classes.colours[i], stroke: classes.colours[i], 'stroke-width': 0.4 }),
      ),
    ];
  });
}

function surfaceLine(data: BinSection, span: LocalSpan, units: Units) {
  return ownMark((frame: Frame) => {
    let d = '';
    data.surface.forEach((step, i) => {
      const from = Math.max(span.fromMs, step.fromMs);
      const to = Math.min(span.toMs, data.surface[i + 1]?.fromMs ?? span.toMs);
      if (to <= from) return;
      const y = px(frame.y(units.shown('length', step.depthM)));
      d += `${d === '' ? 'M' : 'L'}${px(frame.x(new Date(from)))} ${y}H${px(frame.x(new Date(to)))}`;
    });
    return [
      frame.element('path', { d, fill: 'none', stroke: 'var(--ink)', 'stroke-width': 1.5, 'stroke-dasharray': '5 3' }),
      frame.element('path', {
        d: `M${frame.left} ${frame.bottom}H${frame.right}`,
        stroke: 'var(--ink)',
        'stroke-width': 2,
      }),
      frame.element('path', {
        d: boxPath(frame.left, frame.top, frame.right, frame.bottom),
        fill: 'none',
        stroke: 'var(--rule)',
      }),
      readBox(frame, 0),
    ];
  });
}
