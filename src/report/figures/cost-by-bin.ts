import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { type WhiskerRow, whiskerMarks } from './whisker-marks.ts';

export interface CostByBin {
  id: string;
  title: string;
  quantity: Quantity;
  /** estimates in the shown unit */
  bins: readonly { name: string; cost: Estimate }[];
  /** true: a table above says why a bin has no cost */
  reasonsAbove?: boolean;
}

interface Row extends WhiskerRow {
  name: string;
  text: string;
}

/** Bins side by side, cheapest first: a dot for each estimate, a line for its interval; those without are named below. */
export function costByBin(data: CostByBin, units: Units): Figure {
  const { quantity } = data;
  const rows: Row[] = data.bins
    .flatMap(({ name, cost }, i) => {
      if (cost.value === null) return [];
      const [low, high] = cost.interval ?? [cost.value, cost.value];
      // Two bins may share a name; their rows stay two.
      const text = units.amount(quantity, cost);
      return [
        { key: `${i}`, name, value: cost.value, low, high, text, said: `${name}: ${text} ${units.unit(quantity)}` },
      ];
    })
    .sort((a, b) => a.value - b.value || a.low - b.low);
  const lacking = data.bins.filter(({ cost }) => cost.value === null);
  const told = data.reasonsAbove
    ? ': the notes of the table say why.'
    : `. ${lacking.map((one) => `${one.name}: ${one.cost.why ?? 'not known.'}`).join(' ')}`;
  const best = rows[0];
  const worst = rows.at(-1);
  return {
    id: data.id,
    title: data.title,
    subtitle: `${units.unit(quantity)}, with 90 % interval; cheapest first`,
    alt:
      best === undefined || worst === undefined
        ? 'No bin has this cost.'
        : `Bins by cost in ${units.unit(quantity)}: from ${best.name} at ${best.text} to ${worst.name} at ${worst.text}.`,
    legend: [
      { label: 'estimate', swatch: 'dot' },
      { label: '90 % interval', swatch: 'whisker' },
    ],
    notShown: lacking.length === 0 ? null : `${lacking.length} of ${data.bins.length} bins not shown${told}`,
    draw: (size) => drawRows(rows, units.unit(quantity), size),
  };
}

function drawRows(rows: readonly Row[], unit: string, size: Size): string {
  const nameOf = new Map(rows.map((row) => [row.key, row.name]));
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  // Fifty bins still fit a printed page.
  const step = size.narrow ? 50 : rows.length <= 15 ? 38 : rows.length <= 30 ? 26 : 18;
  const end = Math.max(0, ...rows.map((row) => row.high));
  return draw(size, {
    height: rows.length * step + 62,
    marginLeft: size.narrow ? 8 : Math.min(280, 16 + longest * 8),
    marginRight: size.narrow ? 8 : 170,
    marginTop: 8,
    marginBottom: 54,
    x: {
      domain: [Math.min(0, ...rows.map((row) => row.low)), end || 1],
      label: `${unit} →`,
      grid: true,
      ticks: size.narrow ? 4 : 8,
    },
    y: { domain: rows.map((row) => row.key), axis: null },
    marks: [
      Plot.ruleX([0]),
      size.narrow
        ? Plot.text(rows, {
            x: 0,
            y: 'key',
            text: (d: Row) => `${d.name}: ${d.text}`,
            textAnchor: 'start',
            dy: -13,
            dx: 4,
          })
        : [
            Plot.axisY({ tickFormat: (key: string) => nameOf.get(key) ?? '', tickSize: 0, label: null }),
            Plot.text(rows, { x: 'high', y: 'key', text: 'text', textAnchor: 'start', dx: 12 }),
          ],
      ...whiskerMarks(rows, step, size.narrow ? 6 : 0),
    ],
  });
}
