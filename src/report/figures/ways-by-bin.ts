import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { inParts, PANELS_A_PAGE } from './in-parts.ts';
import { type WhiskerRow, whiskerMarks } from './whisker-marks.ts';

/** One quantity of each bin, had in independent ways. */
export interface WaysByBin {
  id: string;
  title: string;
  quantity: Quantity;
  /** estimates as `Units` takes them */
  bins: readonly { name: string; ways: readonly { name: string; of: Estimate }[] }[];
  /** said of what is not drawn; null where all is */
  notShown: string | null;
}

interface Row extends WhiskerRow {
  name: string;
  text: string;
}

/** Under each bin's name its ways, a dot with its interval each: where the lines overlap the ways agree. */
export function waysByBin(whole: WaysByBin, units: Units): Figure {
  const ends = whole.bins.flatMap(({ ways }) =>
    ways.flatMap(({ of }) => (of.value === null ? [] : (of.interval ?? [of.value]))),
  );
  const range = [0, ...ends.map((value) => units.shown(whole.quantity, value))];
  const domain: [number, number] = [Math.min(...range), Math.max(...range) || 1];
  return inParts(whole.bins, PANELS_A_PAGE, (bins) => figureOf({ ...whole, bins }, domain, units));
}

function figureOf(data: WaysByBin, domain: [number, number], units: Units): Figure {
  const { quantity } = data;
  const rows: Row[] = [];
  const headings: { key: string; text: string }[] = [];
  const keys: string[] = [];
  const shown = (value: number) => units.shown(quantity, value);
  for (const { name, ways } of data.bins) {
    const known = ways.filter(({ of }) => of.value !== null);
    if (known.length === 0) continue;
    headings.push({ key: `bin ${headings.length}`, text: name });
    keys.push(`bin ${headings.length - 1}`);
    for (const way of known) {
      const value = shown(Number(way.of.value));
      const [low, high] = (way.of.interval ?? [Number(way.of.value), Number(way.of.value)]).map(shown);
      keys.push(`${rows.length}`);
      const text = units.amount(quantity, way.of);
      const said = `${name}, ${way.name}: ${text} ${units.unit(quantity)}`;
      rows.push({ key: `${rows.length}`, name: way.name, value, low, high, text, said });
    }
  }
  const unit = units.unit(quantity);
  return {
    id: data.id,
    title: data.title,
    subtitle: `${unit}, with 90 % interval; ways whose lines overlap agree`,
    alt:
      rows.length === 0
        ? 'No bin has a value.'
        : data.bins
            .map(({ name, ways }) => {
              const said = ways.filter(({ of }) => of.value !== null);
              return `${name}: ${said.length === 0 ? 'not known' : said.map((way) => `${way.name} ${units.amount(quantity, way.of)} ${unit}`).join(', ')}.`;
            })
            .join(' '),
    legend: [
      { label: 'estimate', swatch: 'dot' },
      { label: '90 % interval', swatch: 'whisker' },
    ],
    notShown: data.notShown,
    draw: (size) => drawWays({ rows, headings, keys, domain }, unit, size),
  };
}

interface Drawn {
  rows: readonly Row[];
  headings: readonly { key: string; text: string }[];
  keys: readonly string[];
  domain: [number, number];
}

function drawWays({ rows, headings, keys, domain }: Drawn, unit: string, size: Size): string {
  const { narrow } = size;
  const step = narrow ? 42 : keys.length <= 24 ? 27 : 20;
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  const [start] = domain;
  // room for half of the first tick's number
  const marginLeft = narrow ? (start < 0 ? 28 : 10) : Math.min(260, 34 + longest * 8);
  const nameOf = new Map(rows.map((row) => [row.key, row.name]));
  const at = { x: () => start, y: 'key', textAnchor: 'start' } as const;
  // A rim in the paper's colour keeps words readable where the line at zero runs through them.
  const rim = { stroke: 'var(--paper)', strokeWidth: 4, fill: 'currentColor' } as const;
  return draw(size, {
    height: keys.length * step + 70,
    marginLeft,
    marginRight: narrow ? 16 : 210,
    marginTop: 8,
    marginBottom: 52,
    x: { domain, label: `${unit} →`, grid: true, ticks: narrow ? 3 : 8 },
    y: { domain: keys, axis: null },
    marks: [
      Plot.ruleX([0]),
      ...(narrow
        ? [Plot.text(rows, { ...at, text: (d: Row) => `${d.name}: ${d.text}`, dy: -11, dx: 4, ...rim })]
        : [
            Plot.axisY({ tickFormat: (key: string) => nameOf.get(key) ?? '', tickSize: 0, label: null }),
            Plot.text(rows, { x: 'high', y: 'key', text: 'text', textAnchor: 'start', dx: 12, ...rim }),
          ]),
      Plot.text(headings, {
        ...at,
        text: 'text',
        fontWeight: 'bold',
        dx: narrow ? 4 : 6 - marginLeft,
        dy: narrow ? 8 : 2,
      }),
      ...whiskerMarks(rows, step, narrow ? 6 : 0),
    ],
  });
}
