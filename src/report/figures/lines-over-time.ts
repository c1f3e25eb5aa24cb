import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { ReadGrid } from '../read-grid.ts';
import type { Units } from '../units.ts';
import { draw, ownMark, readBox } from './draw.ts';
import { type FanDay, fanStrip, type LocalSpan, STRIP, timeAxis, timeScale } from './time-axis.ts';

/** A line by local day; null where nothing is known. */
export interface DayLine {
  label: string;
  style: 'line' | 'dash';
  values: readonly (number | null)[];
  /** at its last day, 90 % */
  end?: { low: number; high: number };
}

/** One quantity through the season by local day: one or two lines, perhaps a band behind them and a level. */
export interface LinesOverTime {
  id: string;
  title: string;
  subtitle: string;
  alt: string;
  quantity: Quantity;
  /** local midnights as if UTC, rising without holes, [days] */
  dayMs: readonly number[];
  lines: readonly DayLine[];
  band?: { label: string; low: readonly (number | null)[]; high: readonly (number | null)[] };
  level?: { label: string; value: number };
  /** the scale begins at nothing */
  fromZero?: true;
  fanDays: readonly FanDay[];
}

const DAY_MS = 86_400_000;

/** Lines of one quantity through the season, the fans above. */
export function linesOverTime(data: LinesOverTime, units: Units): Figure {
  const known = data.lines[0].values.filter((one) => one !== null).length;
  if (known === 0) throw new Error('no day has a value');
  const left = data.dayMs.length - known;
  const ends = data.lines.some((line) => line.end !== undefined);
  return {
    id: data.id,
    title: data.title,
    subtitle: `${data.subtitle}; fans above`,
    alt: data.alt,
    legend: [
      ...data.lines.map(({ label, style }) => ({ label, swatch: style })),
      ...(data.band === undefined ? [] : [{ label: data.band.label, swatch: 'band' }]),
      ...(data.level === undefined ? [] : [{ label: data.level.label, swatch: 'rule' }]),
      ...(ends ? [{ label: '90 % interval at the end', swatch: 'whisker' }] : []),
    ],
    notShown: left === 0 ? null : `${left} of ${data.dayMs.length} days not shown: too few readings tell them.`,
    grids: [gridOf(data, units)],
    draw: (size) => drawLines(data, units, size),
  };
}

function gridOf({ dayMs, lines, quantity }: LinesOverTime, units: Units): ReadGrid {
  const unit = units.unit(quantity);
  const said = lines.map(({ label }, i) => `${label} $${i}${unit === '' ? '' : ` ${unit}`}`);
  return {
    columns: { fromMs: dayMs[0], stepMs: DAY_MS, count: dayMs.length },
    rows: [{ label: '', low: 0, high: 1 }],
    say: said.join(', '),
    none: 'not known',
    layers: lines.map(({ values }) => ({
      values: values.map((one) => (one === null ? Number.NaN : units.shown(quantity, one))),
      decimals: quantity === 'temperature' ? 0 : 1,
    })),
  };
}

function drawLines(data: LinesOverTime, units: Units, size: Size): string {
  const { dayMs, lines, band, level, quantity } = data;
  const span: LocalSpan = { fromMs: dayMs[0], toMs: dayMs[dayMs.length - 1] + DAY_MS };
  const at = (day: number) => new Date(dayMs[day] + DAY_MS / 2);
  const shown = (value: number | null) => (value === null ? Number.NaN : units.shown(quantity, value));
  const points = (values: readonly (number | null)[]) => values.map((one, i) => ({ at: at(i), y: shown(one) }));
  const between = band?.low.map((low, i) => ({ at: at(i), low: shown(low), high: shown(band.high[i]) })) ?? [];
  // Ends that lie on the last day stand side by side.
  const ends = lines.flatMap(({ end, style }, i) =>
    end === undefined
      ? []
      : [
          {
            at: new Date(span.toMs - i * (span.toMs - span.fromMs) * 0.012),
            low: shown(end.low),
            high: shown(end.high),
            style,
          },
        ],
  );
  const all = [
    ...lines.flatMap(({ values }) => values.map(shown)),
    ...between.flatMap(({ low, high }) => [low, high]),
    ...ends.flatMap(({ low, high }) => [low, high]),
    ...(level === undefined ? [] : [shown(level.value)]),
    ...(data.fromZero ? [0] : []),
  ].filter((one) => !Number.isNaN(one));
  const low = Math.min(...all);
  const high = Math.max(...all);
  return draw(size, {
    height: size.narrow ? 216 : 320,
    marginTop: STRIP.top + STRIP.height + STRIP.gap + 8,
    marginLeft: size.narrow ? 38 : 96,
    marginRight: size.narrow ? 12 : 20,
    marginBottom: 28,
    x: timeScale(span),
    y: { domain: [low, high > low ? high : low + 1], nice: true, label: null, grid: true, ticks: 6 },
    marks: [
      Plot.areaY(between, { x: 'at', y1: 'low', y2: 'high', fill: 'var(--rule)', fillOpacity: 0.35 }),
      Plot.ruleY(level === undefined ? [] : [shown(level.value)], { strokeWidth: 1 }),
      ...lines.map(({ values, style }) =>
        Plot.lineY(points(values), {
          x: 'at',
          y: 'y',
          strokeWidth: 1.8,
          ...(style === 'dash' ? { strokeDasharray: '5 3' } : {}),
        }),
      ),
      ...ends.map((end) =>
        Plot.link([end], {
          x1: 'at',
          x2: 'at',
          y1: 'low',
          y2: 'high',
          strokeWidth: 2,
          ...(end.style === 'dash' ? { strokeDasharray: '5 3' } : {}),
        } as never),
      ),
      timeAxis(span, size),
      fanStrip(data.fanDays, span, size),
      ownMark((frame) => [readBox(frame, 0)]),
    ],
  });
}
