import * as Plot from '@observablehq/plot';
import { listed } from '../../base/listed.ts';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { panelGrid } from './panel-grid.ts';

/** A crop's airflow resistance. All in the shown units of `airflow per floor` and `pressure per depth`. */
export interface ResistancePanel {
  crop: string;
  lines: readonly {
    kind: 'loose' | 'packed' | 'low airflow';
    points: readonly { airflow: number; pressure: number }[];
  }[];
  published: readonly { airflow: number; pressure: number; agrees: boolean; assumed: boolean }[];
}

export interface ResistancePanels {
  id: string;
  title: string;
  packing: number;
  panels: readonly ResistancePanel[];
}

const DASHES: Readonly<Record<ResistancePanel['lines'][number]['kind'], string>> = {
  loose: 'none',
  packed: '7 3',
  'low airflow': '2 3',
};

/** Small multiples, a crop each: pressure per depth against airflow, both on logarithmic scales, published points on them. */
export function resistancePanels(data: ResistancePanels, units: Units): Figure {
  const points = data.panels.flatMap((panel) => panel.published);
  const bare = data.panels.filter((panel) => panel.published.length === 0).map((panel) => panel.crop);
  const agreeing = points.filter((point) => point.agrees).length;
  const dotted = data.panels.some((panel) => panel.lines.some((line) => line.kind === 'low airflow'));
  const assumed = points.some((point) => point.assumed);
  const missed = points.some((point) => !point.agrees);
  const pressures = data.panels.flatMap((panel) =>
    panel.lines.flatMap((line) => line.points.map((point) => point.pressure)),
  );
  const range = [Math.min(...pressures), Math.max(...pressures)].map((value) =>
    units.number('pressure per depth', value),
  );
  return {
    id: data.id,
    title: data.title,
    subtitle: `Pressure per depth (${units.unit('pressure per depth')}) against airflow over the floor (${units.unit('airflow per floor')}), both logarithmic; lines end where the measured airflows end`,
    alt: `Airflow resistance of ${listed(data.panels.map((panel) => panel.crop)).toLowerCase()}, from ${range.join(' to ')} ${units.unit('pressure per depth')}. ${points.length === 0 ? 'No published point is known here.' : `${agreeing} of ${points.length} published points lie on the packed line.`}`,
    legend: [
      { label: 'clean, loose, dry', swatch: 'line' },
      { label: `packed, × ${data.packing}`, swatch: 'dash' },
      ...(dotted ? [{ label: 'constants for low airflow, loose', swatch: 'dotted' }] : []),
      ...(points.length > 0 ? [{ label: 'published static pressure', swatch: 'ring' }] : []),
      ...(assumed ? [{ label: 'from a published fan power, 60 % efficiency assumed', swatch: 'square' }] : []),
      ...(missed ? [{ label: 'published, not as the packed line gives it', swatch: 'cross' }] : []),
    ],
    notShown:
      bare.length === 0
        ? null
        : `No published pressure is known here for ${listed(bare).toLowerCase()}: those lines rest on the standard’s constants alone.`,
    draw: (size) => drawPanels(data.panels, units, size),
  };
}

/** Powers of ten within a range. */
function decades(low: number, high: number): number[] {
  const out: number[] = [];
  for (let power = Math.ceil(Math.log10(low)); 10 ** power <= high; power++) out.push(10 ** power);
  return out;
}

/** `0.001`, `10`: powers of ten as they are. */
function plainNumber(value: number): string {
  const power = Math.round(Math.log10(value));
  return power >= 0 ? String(10 ** power) : (10 ** power).toFixed(-power);
}

function drawPanels(panels: readonly ResistancePanel[], units: Units, size: Size): string {
  const grid = panelGrid(panels.length, size, 210);
  const all = panels.flatMap((panel) => [...panel.lines.flatMap((line) => line.points), ...panel.published]);
  const domain = (of: 'airflow' | 'pressure'): [number, number] => [
    0.8 * Math.min(...all.map((point) => point[of])),
    1.25 * Math.max(...all.map((point) => point[of])),
  ];
  const published = panels.flatMap((panel, p) =>
    panel.published.map((point) => ({
      ...grid.places[p],
      ...point,
      symbol: point.agrees ? (point.assumed ? 'square' : 'circle') : 'times',
    })),
  );
  const headings = panels.map((panel, p) => ({ ...grid.places[p], crop: panel.crop }));
  const facet = { fx: 'fx', fy: 'fy' } as const;
  const [x, y] = [domain('airflow'), domain('pressure')];
  return draw(size, {
    height: grid.height,
    ...grid.margins,
    marginLeft: 60,
    ...grid.facets,
    x: {
      type: 'log',
      domain: x,
      label: units.unit('airflow per floor'),
      labelArrow: 'none',
      ticks: decades(...x),
      tickFormat: plainNumber,
      grid: true,
    },
    y: { type: 'log', domain: y, label: null, ticks: decades(...y), tickFormat: plainNumber, grid: true },
    symbol: { type: 'identity' },
    marks: [
      Plot.frame({ ...facet, stroke: 'var(--rule)', anchor: 'bottom' } as never),
      panels.flatMap((panel, p) =>
        panel.lines.map((line) =>
          Plot.line(
            line.points.map((point) => ({ ...grid.places[p], ...point })),
            { ...facet, x: 'airflow', y: 'pressure', strokeWidth: 1.6, strokeDasharray: DASHES[line.kind] },
          ),
        ),
      ),
      Plot.dot(published, {
        ...facet,
        x: 'airflow',
        y: 'pressure',
        symbol: 'symbol',
        r: 3.4,
        stroke: 'var(--c2)',
        strokeWidth: 1.4,
      } as never),
      Plot.text(headings, { ...facet, text: 'crop', frameAnchor: 'top-left', dy: -22, fontWeight: 650 }),
    ].flat() as never,
  });
}
