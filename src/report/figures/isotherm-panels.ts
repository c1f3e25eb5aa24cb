import * as Plot from '@observablehq/plot';
import { listed } from '../../base/listed.ts';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw, typeSize } from './draw.ts';
import { panelGrid, spreadLabels } from './panel-grid.ts';

/** A crop's isotherm and the published moistures of the crop. Moistures and humidities as fractions. */
export interface IsothermPanel {
  crop: string;
  /** equation and edition */
  isotherm: string;
  /** coldest first */
  lines: readonly { tempC: number; points: readonly { rh: number; moistureWb: number }[] }[];
  published: readonly {
    tempC: number;
    rh: number;
    moistureWb: number;
    /** the isotherm's own at the point's temperature */
    oursWb: number;
    agrees: boolean;
  }[];
}

export interface IsothermPanels {
  id: string;
  title: string;
  panels: readonly IsothermPanel[];
}

/** Lines differ by dash, not by colour: coldest whole, hottest dotted. */
const DASHES = ['none', '7 3', '2 3'] as const;
const LOWEST_RH = 10;

/** Small multiples, a crop each: equilibrium moisture against humidity at three temperatures, published points on them. */
export function isothermPanels(data: IsothermPanels, units: Units): Figure {
  const points = data.panels.flatMap((panel) => panel.published);
  const bare = data.panels.filter((panel) => panel.published.length === 0).map((panel) => panel.crop);
  const temps = (data.panels[0]?.lines ?? []).map((line) => units.number('temperature', line.tempC));
  return {
    id: data.id,
    title: data.title,
    subtitle: `Equilibrium moisture (%, wet basis) against relative humidity (%) at ${listed(temps)} ${units.unit('temperature')}; a published point at another temperature hangs on a stem from what the isotherm gives there`,
    alt: alternative(data, points),
    legend: [
      { label: 'published, as the isotherm gives it', swatch: 'ring' },
      { label: 'published, not as this isotherm gives it', swatch: 'cross' },
    ],
    notShown: bare.length === 0 ? null : `No published point is known here for ${listed(bare).toLowerCase()}.`,
    draw: (size) => drawPanels(data.panels, units, size),
  };
}

function alternative({ panels }: IsothermPanels, points: IsothermPanel['published']): string {
  const agreeing = points.filter((point) => point.agrees).length;
  const moist = panels.flatMap((panel) =>
    panel.lines.flatMap((line) => line.points.map((point) => 100 * point.moistureWb)),
  );
  const worst = Math.max(0, ...points.map((point) => 100 * Math.abs(point.moistureWb - point.oursWb)));
  return `Isotherms of ${listed(panels.map((panel) => panel.crop)).toLowerCase()}, from ${Math.min(...moist).toFixed(0)} to ${Math.max(...moist).toFixed(0)} % moisture. ${agreeing} of ${points.length} published points lie on them${points.length === 0 ? '' : `; the farthest is ${worst.toFixed(1)} points off`}.`;
}

function drawPanels(panels: readonly IsothermPanel[], units: Units, size: Size): string {
  const grid = panelGrid(panels.length, size, panels.length > 9 ? 205 : 240);
  const all = panels.flatMap((panel) => [
    ...panel.lines.flatMap((line) => line.points.map((point) => point.moistureWb)),
    ...panel.published.map((point) => point.moistureWb),
  ]);
  const top = Math.ceil((100 * Math.max(...all)) / 5) * 5;
  const perPx = top / grid.panelHeight;
  const lines = panels.flatMap((panel, p) =>
    panel.lines.flatMap((line, l) =>
      line.points.map((point) => ({
        ...grid.places[p],
        line: `${p} ${l}`,
        dash: DASHES[l % DASHES.length],
        rh: 100 * point.rh,
        moisture: 100 * point.moistureWb,
      })),
    ),
  );
  const labels = panels.flatMap((panel, p) => {
    const ends = panel.lines.map((line) => line.points.at(-1) ?? { rh: 1, moistureWb: 0 });
    const placed = spreadLabels(
      ends.map((end) => (-100 * end.moistureWb) / perPx),
      typeSize(size),
    );
    return panel.lines.map((line, l) => ({
      ...grid.places[p],
      rh: 100 * ends[l].rh,
      moisture: -placed[l] * perPx,
      text: `${units.number('temperature', line.tempC)} ${units.unit('temperature')}`,
    }));
  });
  const published = panels.flatMap((panel, p) =>
    panel.published.map((point) => ({
      ...grid.places[p],
      rh: 100 * point.rh,
      moisture: 100 * point.moistureWb,
      ours: 100 * point.oursWb,
      symbol: point.agrees ? 'circle' : 'times',
    })),
  );
  const headings = panels.map((panel, p) => ({ ...grid.places[p], crop: panel.crop, isotherm: panel.isotherm }));
  const facet = { fx: 'fx', fy: 'fy' } as const;
  return draw(size, {
    height: grid.height,
    ...grid.margins,
    ...grid.facets,
    x: { domain: [LOWEST_RH, 92], label: 'relative humidity, %', labelArrow: 'none', ticks: [20, 40, 60, 80] },
    y: { domain: [0, top], label: null, ticks: 5, grid: true },
    symbol: { type: 'identity' },
    marks: [
      Plot.frame({ ...facet, stroke: 'var(--rule)', anchor: 'bottom' } as never),
      panels.flatMap((panel, p) =>
        panel.lines.map((_, l) =>
          Plot.line(
            lines.filter((point) => point.line === `${p} ${l}`),
            { ...facet, x: 'rh', y: 'moisture', strokeWidth: 1.6, strokeDasharray: DASHES[l % DASHES.length] },
          ),
        ),
      ),
      Plot.text(labels, { ...facet, x: 'rh', y: 'moisture', text: 'text', textAnchor: 'start', dx: 6 }),
      Plot.link(published, { ...facet, x: 'rh', y1: 'moisture', y2: 'ours', stroke: 'var(--c2)', strokeWidth: 1.2 }),
      Plot.dot(published, {
        ...facet,
        x: 'rh',
        y: 'moisture',
        symbol: 'symbol',
        r: 3.8,
        stroke: 'var(--c2)',
        strokeWidth: 1.6,
      } as never),
      Plot.text(headings, { ...facet, text: 'crop', frameAnchor: 'top-left', dy: -34, fontWeight: 650 }),
      Plot.text(headings, { ...facet, text: 'isotherm', frameAnchor: 'top-left', dy: -18, fill: 'var(--soft)' }),
    ].flat() as never,
  });
}
