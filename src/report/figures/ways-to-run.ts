import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { labelsAbove } from './labels-above.ts';
import { type WhiskerRow, whiskerMarks } from './whisker-marks.ts';

/** A way to run a bin's fan, and what it would have cost. */
export interface WayToRun {
  name: string;
  cost: Estimate;
  /** it brings the grain to its target; null where there is none to reach */
  reaches: boolean | null;
  /** set apart from the others: as it was run, the best in hindsight */
  apart: boolean;
}

export interface WaysToRun {
  id: string;
  title: string;
  ways: readonly WayToRun[];
  /** what the ranges of the costs are */
  whisker: string;
  notShown: string | null;
}

interface Row extends WhiskerRow {
  name: string;
  text: string;
  apart: boolean;
}

/** Ways by cost, cheapest first: those that reach the target as dots, the others as rings, as run and the best in hindsight in bold. */
export function waysToRun({ id, title, ways, whisker, notShown }: WaysToRun, units: Units): Figure {
  const known = ways
    .filter(({ cost }) => cost.value !== null)
    .sort((a, b) => Number(b.reaches) - Number(a.reaches) || Number(a.cost.value) - Number(b.cost.value));
  const rows = known.map(({ name, cost, reaches, apart }, i): Row => {
    const value = Number(cost.value);
    const [low, high] = cost.interval ?? [value, value];
    const text = `${units.amount('money', cost)}${reaches === false ? ', target not reached' : ''}`;
    return { key: `${i}`, name, value, low, high, text, open: reaches === false, apart, said: `${name}: ${text}` };
  });
  const unit = units.unit('money');
  const aims = known.some(({ reaches }) => reaches !== null);
  return {
    id,
    title,
    subtitle: `${unit}, by the model; cheapest ${aims ? 'of those that reach the target ' : ''}first`,
    alt: rows.map(({ name, text }) => `${name}: ${text} ${unit}.`).join(' '),
    legend: [
      ...(aims ? [{ label: 'reaches the target', swatch: 'dot' }] : []),
      ...(rows.some((row) => row.open) ? [{ label: 'does not', swatch: 'ring' }] : []),
      { label: whisker, swatch: 'whisker' },
    ],
    notShown,
    draw: (size) => drawWays(rows, unit, size),
  };
}

function drawWays(rows: readonly Row[], unit: string, size: Size): string {
  const { narrow } = size;
  const above = labelsAbove(rows.map((row) => ({ ...row, bold: row.apart })));
  const step = narrow ? above.step : 27;
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  const end = Math.max(0, ...rows.map((row) => row.high));
  const nameOf = new Map(rows.map((row) => [row.key, row.name]));
  const rim = { stroke: 'var(--paper)', strokeWidth: 4, fill: 'currentColor' } as const;
  const groups = [
    { rows: rows.filter((row) => row.apart), fontWeight: 'bold' },
    { rows: rows.filter((row) => !row.apart), fontWeight: 'normal' },
  ];
  return draw(size, {
    height: rows.length * step + 70,
    marginLeft: narrow ? 10 : Math.min(260, 34 + longest * 8),
    marginRight: narrow ? 16 : 250,
    marginTop: 8,
    marginBottom: 52,
    x: { domain: [0, end || 1], label: `${unit} →`, grid: true, ticks: narrow ? 3 : 6 },
    y: { domain: rows.map((row) => row.key), axis: null },
    marks: [
      Plot.ruleX([0]),
      ...groups.flatMap(({ rows: some, fontWeight }) =>
        narrow
          ? [
              Plot.text(some, {
                x: () => 0,
                y: 'key',
                textAnchor: 'start',
                text: above.words,
                dy: above.label,
                dx: 4,
                fontWeight,
                ...rim,
              }),
            ]
          : [
              Plot.text(some, {
                x: () => 0,
                y: 'key',
                textAnchor: 'end',
                text: (row: Row) => nameOf.get(row.key) ?? '',
                dx: -10,
                fontWeight,
              }),
              Plot.text(some, { x: 'high', y: 'key', text: 'text', textAnchor: 'start', dx: 12, fontWeight, ...rim }),
            ],
      ),
      ...whiskerMarks(rows, step, narrow ? above.whisker : 0),
    ],
  });
}
