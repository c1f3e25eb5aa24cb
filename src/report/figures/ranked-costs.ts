import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { type WhiskerRow, whiskerMarks } from './whisker-marks.ts';

export interface RankedBin {
  name: string;
  /** in the shown unit; with a value */
  cost: Estimate;
  /** `1 to 2`; null: shown, not ranked */
  place: string | null;
}

export interface RankedCosts {
  id: string;
  title: string;
  quantity: Quantity;
  /** bins that are ranked with each other, or one that is not; a heading names them where there are several groups */
  groups: readonly { name: string; bins: readonly RankedBin[] }[];
  notShown: string | null;
}

interface Row extends WhiskerRow {
  name: string;
  place: string;
  text: string;
}

/** Bins by cost, cheapest first within each group: a dot with its interval, its place at the side, the number at the line. */
export function rankedCosts(data: RankedCosts, units: Units): Figure {
  const { quantity, groups } = data;
  const rows: Row[] = [];
  const headings: { key: string; text: string }[] = [];
  const keys: string[] = [];
  groups.forEach((group, g) => {
    if (groups.length > 1) {
      headings.push({ key: `h${g}`, text: group.name });
      keys.push(`h${g}`);
    }
    const sorted = [...group.bins].sort((a, b) => Number(a.cost.value) - Number(b.cost.value));
    for (const { name, cost, place } of sorted) {
      const value = Number(cost.value);
      const [low, high] = cost.interval ?? [value, value];
      // Two bins may share a name; their rows stay two.
      const key = `${rows.length}`;
      keys.push(key);
      const text = units.amount(quantity, cost);
      const said = `${name}: ${text} ${units.unit(quantity)}, ${place === null ? 'not ranked' : `place ${place}`}`;
      rows.push({ key, name, value, low, high, text, place: place ?? '–', open: place === null, said });
    }
  });
  const [first, last] = [...rows]
    .sort((a, b) => a.value - b.value)
    .filter((_, i, all) => i === 0 || i === all.length - 1);
  const unit = units.unit(quantity);
  return {
    id: data.id,
    title: data.title,
    subtitle: `${unit}, with 90 % interval; cheapest first, the place at the side`,
    alt:
      first === undefined
        ? 'No bin has this cost.'
        : last === undefined
          ? `One bin: ${first.name} at ${first.text} ${unit}.`
          : `Bins by cost in ${unit}: from ${first.name} at ${first.text} to ${last.name} at ${last.text}. Places: ${rows.map((row) => `${row.name} ${row.open ? 'not ranked' : row.place}`).join(', ')}.`,
    legend: [
      { label: 'estimate', swatch: 'dot' },
      { label: '90 % interval', swatch: 'whisker' },
      ...(rows.some((row) => row.open) ? [{ label: 'not ranked', swatch: 'ring' }] : []),
    ],
    notShown: data.notShown,
    draw: (size) => drawRows({ rows, headings, keys }, unit, size),
  };
}

interface Drawn {
  rows: readonly Row[];
  headings: readonly { key: string; text: string }[];
  keys: readonly string[];
}

/** Fifty bins still fit a printed page: rows come closer as they become many. */
function stepOf(count: number, narrow: boolean): number {
  if (narrow) return 46;
  return count <= 15 ? 36 : count <= 30 ? 25 : 18;
}

function drawRows({ rows, headings, keys }: Drawn, unit: string, size: Size): string {
  const { narrow } = size;
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  const step = stepOf(keys.length, narrow);
  const end = Math.max(0, ...rows.map((row) => row.high));
  const start = Math.min(0, ...rows.map((row) => row.low));
  const marginLeft = narrow ? 8 : Math.min(330, 76 + longest * 8);
  const nameOf = new Map(rows.map((row) => [row.key, row.name]));
  const said = (row: Row) => `${row.open ? '' : `${row.place}. `}${row.name}: ${row.text}`;
  const at = { x: () => start, y: 'key', textAnchor: 'start' } as const;
  return draw(size, {
    height: keys.length * step + 74,
    marginLeft,
    marginRight: narrow ? 8 : 170,
    marginTop: 22,
    marginBottom: 52,
    x: { domain: [start, end || 1], label: `${unit} →`, grid: true, ticks: narrow ? 4 : 8 },
    y: { domain: keys, axis: null },
    marks: [
      Plot.ruleX([0]),
      ...(narrow
        ? [Plot.text(rows, { ...at, text: said, dy: -12, dx: 4 })]
        : [
            Plot.axisY({ tickFormat: (key: string) => nameOf.get(key) ?? '', tickSize: 0, label: null }),
            Plot.text(rows, { ...at, text: 'place', dx: 6 - marginLeft }),
            Plot.text(['place'], {
              frameAnchor: 'top-left',
              textAnchor: 'start',
              text: (d: string) => d,
              dx: 6 - marginLeft,
              dy: -18,
              fontStyle: 'italic',
            }),
            Plot.text(rows, { x: 'high', y: 'key', text: 'text', textAnchor: 'start', dx: 12 }),
          ]),
      Plot.text(headings, {
        ...at,
        text: 'text',
        fontWeight: 'bold',
        dx: narrow ? 4 : 6 - marginLeft,
        dy: narrow ? 6 : 0,
      }),
      ...whiskerMarks(rows, step, narrow ? 6 : 0),
    ],
  });
}
