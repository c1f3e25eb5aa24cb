import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { inParts } from './in-parts.ts';
import { labelsAbove } from './labels-above.ts';
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
      /** a ring in place of a dot, and what is said behind its number; null: a dot */
      misses: string | null;
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
    /** what a dot and a ring mean */
    dot: string;
    ring: string;
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
  /** of the axis, in all parts alike */
  end: number;
}

/** Under each bin's name every way: a dot, or a ring where it misses; what is set apart in bold. */
export function waysAcrossBins(whole: WaysAcrossBins, units: Units): Figure {
  const ends = whole.bins.flatMap(({ ways }) => ways.map(({ of }) => of.interval?.[1] ?? of.value ?? 0));
  const end = Math.max(0, ...ends.map((value) => units.shown(whole.quantity, value)));
  return inParts(whole.bins, BINS_A_SHEET, (bins) => figureOf({ ...whole, bins }, end, units));
}

/** With ten ways each a sheet takes so many. */
const BINS_A_SHEET = 4;

function figureOf({ id, title, quantity, bins, notShown, words }: WaysAcrossBins, end: number, units: Units): Figure {
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
    const said = known.map(({ name: way, of, misses, own }) => {
      const value = shown(Number(of.value));
      const [low, high] = (of.interval ?? [Number(of.value), Number(of.value)]).map(shown);
      const text = `${units.amount(quantity, of)}${misses === null ? '' : `, ${misses}`}`;
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
        open: misses !== null,
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
      ...(rows.some((row) => row.open) ? [{ label: words.ring, swatch: 'ring' }] : []),
      { label: words.whisker, swatch: 'whisker' },
    ],
    notShown,
    draw: (size) => drawWays({ rows, headings, keys, end }, unit, size),
  };
}

function drawWays({ rows, headings, keys, end }: Drawn, unit: string, size: Size): string {
  const { narrow } = size;
  const above = labelsAbove(rows.map((row) => ({ ...row, bold: row.own })));
  const step = narrow ? above.step : keys.length <= 24 ? 27 : 20;
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  const marginLeft = narrow ? 10 : Math.min(260, 34 + longest * 8);
  const at = { x: () => 0, y: 'key', textAnchor: 'start' } as const;
  // A rim in the paper's colour keeps words readable where a line runs through them.
  const rim = { stroke: 'var(--paper)', strokeWidth: 4, fill: 'currentColor' } as const;
  const words = (some: readonly Row[], fontWeight: string) =>
    narrow
      ? [Plot.text(some, { ...at, text: above.words, dy: above.label, dx: 4, fontWeight, ...rim })]
      : [
          Plot.text(some, { ...at, textAnchor: 'end', text: 'name', dx: -10, fontWeight }),
          Plot.text(some, { x: 'high', y: 'key', text: 'text', textAnchor: 'start', dx: 12, fontWeight, ...rim }),
        ];
  return draw(size, {
    height: keys.length * step + 70,
    marginLeft,
    marginRight: narrow ? 16 : 290,
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
      ...whiskerMarks(rows, step, narrow ? above.whisker : 0),
    ],
  });
}
