import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { type WhiskerRow, whiskerMarks } from './whisker-marks.ts';

/** Every bin in every way, one scale for all: what moves dots from bin to bin is the bin, what moves them within one is the way. */
export interface WaysAcrossBins {
  id: string;
  title: string;
  quantity: Quantity;
  /** estimates as `Units` takes them, ways in one order in all bins */
  bins: readonly {
    name: string;
    ways: readonly {
      name: string;
      of: Estimate;
      reaches: boolean;
      /** set apart: the way in which the bin was itself run, the best in hindsight */
      own: boolean;
    }[];
  }[];
  notShown: string | null;
  words: {
    /** after the unit: how known, what is bold */
    subtitle: string;
    /** said behind a bold way's name in the text alternative */
    own: string;
    /** what a ring means, after its number and in the legend */
    open: { after: string; legend: string };
    dot: string;
    whisker: string;
  };
}

interface Row extends WhiskerRow {
  name: string;
  text: string;
  own: boolean;
}

interface Drawn {
  rows: readonly Row[];
  headings: readonly { key: string; text: string }[];
  keys: readonly string[];
}

/** Under each bin's name every way: a dot where it reaches the target, a ring where it does not, what is set apart in bold. */
export function waysAcrossBins({ id, title, quantity, bins, notShown, words }: WaysAcrossBins, units: Units): Figure {
  const rows: Row[] = [];
  const headings: { key: string; text: string }[] = [];
  const keys: string[] = [];
  const unit = units.unit(quantity);
  const shown = (value: number) => units.shown(quantity, value);
  const alt: string[] = [];
  for (const { name, ways } of bins) {
    const known = ways.filter(({ of }) => of.value !== null);
    if (known.length === 0) continue;
    headings.push({ key: `bin ${headings.length}`, text: name });
    keys.push(`bin ${headings.length - 1}`);
    const said = known.map(({ name: way, of, reaches, own }) => {
      const value = shown(Number(of.value));
      const [low, high] = (of.interval ?? [Number(of.value), Number(of.value)]).map(shown);
      const text = `${units.amount(quantity, of)}${reaches ? '' : `, ${words.open.after}`}`;
      const key = `${rows.length}`;
      keys.push(key);
      rows.push({
        key,
        name: way,
        value,
        low,
        high,
        text,
        own,
        open: !reaches,
        said: `${name}, ${way}: ${text} ${unit}`,
      });
      return `${way}${own ? ` (${words.own})` : ''} ${text}`;
    });
    alt.push(`${name}: ${said.join('; ')}.`);
  }
  return {
    id,
    title,
    subtitle: `${unit}, ${words.subtitle}`,
    alt: alt.length === 0 ? 'No bin has a value.' : `${title}. In ${unit}. ${alt.join(' ')}`,
    legend: [
      { label: words.dot, swatch: 'dot' },
      ...(rows.some((row) => row.open) ? [{ label: words.open.legend, swatch: 'ring' }] : []),
      { label: words.whisker, swatch: 'whisker' },
    ],
    notShown,
    draw: (size) => drawWays({ rows, headings, keys }, unit, size),
  };
}

function drawWays({ rows, headings, keys }: Drawn, unit: string, size: Size): string {
  const { narrow } = size;
  const step = narrow ? 42 : keys.length <= 24 ? 27 : 20;
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  const end = Math.max(0, ...rows.map((row) => row.high));
  const marginLeft = narrow ? 10 : Math.min(260, 34 + longest * 8);
  const at = { x: () => 0, y: 'key', textAnchor: 'start' } as const;
  // A rim in the paper's colour keeps words readable where a line runs through them.
  const rim = { stroke: 'var(--paper)', strokeWidth: 4, fill: 'currentColor' } as const;
  const words = (some: readonly Row[], fontWeight: string) =>
    narrow
      ? [Plot.text(some, { ...at, text: (row: Row) => `${row.name}: ${row.text}`, dy: -11, dx: 4, fontWeight, ...rim })]
      : [
          Plot.text(some, { ...at, textAnchor: 'end', text: 'name', dx: -10, fontWeight }),
          Plot.text(some, { x: 'high', y: 'key', text: 'text', textAnchor: 'start', dx: 12, fontWeight, ...rim }),
        ];
  return draw(size, {
    height: keys.length * step + 70,
    marginLeft,
    marginRight: narrow ? 16 : 250,
    marginTop: 8,
    marginBottom: 52,
    x: { domain: [0, end || 1], label: `${unit} →`, grid: true, ticks: narrow ? 3 : 6 },
    y: { domain: keys, axis: null },
    marks: [
      Plot.ruleX([0]),
      ...words(
        rows.filter((row) => row.own),
        'bold',
      ),
      ...words(
        rows.filter((row) => !row.own),
        'normal',
      ),
      Plot.text(headings, {
        ...at,
        text: 'text',
        fontWeight: 'bold',
        fontSize: narrow ? 14 : 16,
        dx: narrow ? 4 : 6 - marginLeft,
        dy: narrow ? 8 : 2,
      }),
      ...whiskerMarks(rows, step, narrow ? 6 : 0),
    ],
  });
}
