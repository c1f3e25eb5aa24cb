import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';
import { inParts, PANELS_A_PAGE } from './in-parts.ts';
import { panelGrid } from './panel-grid.ts';

/** Points removed over the fan hours so far, day by day, with how far the readings may be off. */
export interface PointsPanel {
  name: string;
  days: readonly { fanHours: number; points: number; low: number; high: number; stillAir: boolean }[];
}

export interface PointsByFanHours {
  id: string;
  title: string;
  panels: readonly PointsPanel[];
  /** bins that have no days to draw */
  lacking: readonly string[];
}

/** Small multiples to one scale, a bin each: how many points were out after so many fan hours; the steeper the faster. */
export function pointsByFanHours(whole: PointsByFanHours, units: Units): Figure {
  const days = whole.panels.flatMap((panel) => panel.days);
  const scale = {
    low: Math.min(0, ...days.map(({ low }) => Math.floor(low))),
    high: Math.max(1, ...days.map(({ high }) => Math.ceil(high))),
    most: Math.max(1, ...days.map(({ fanHours }) => fanHours)),
  };
  return inParts(whole.panels, PANELS_A_PAGE + 2, (panels) => figureOf({ ...whole, panels }, scale, units));
}

/** What all parts share. */
interface Scale {
  low: number;
  high: number;
  most: number;
}

function figureOf(data: PointsByFanHours, scale: Scale, units: Units): Figure {
  const days = data.panels.flatMap((panel) => panel.days);
  if (days.length === 0) throw new Error('no bin has days of moistures beside fan hours');
  const ends = data.panels.map(({ name, days: own }) => {
    const last = own[own.length - 1];
    return `${name} ${units.say('points', last.points)} after ${units.say('hours', last.fanHours)}`;
  });
  return {
    id: data.id,
    title: data.title,
    subtitle: `Points removed by fan hours so far, h; the band is how far the day’s readings may be off (90 %)`,
    alt: `Points removed against fan hours: ${ends.join('; ')}.`,
    legend: [
      { label: 'fan stood still two hours or more', swatch: 'dot' },
      { label: 'fan ran: shows the passing air', swatch: 'ring' },
      { label: '90 % of the readings’ error', swatch: 'band' },
    ],
    notShown: data.lacking.length === 0 ? null : `Not shown: ${data.lacking.join(', ')}; the table says why.`,
    draw: (size) => drawPanels(data.panels, scale, units, size),
  };
}

function drawPanels(panels: readonly PointsPanel[], scale: Scale, units: Units, size: Size): string {
  const grid = panelGrid(panels.length, size, size.narrow ? 150 : 190);
  const said = (name: string, { fanHours, points, low, high, stillAir }: PointsPanel['days'][number]) => {
    const of = units.say('points', { value: points, interval: [low, high], why: null });
    return `${name}, ${units.say('hours', fanHours)}: ${of}${stillAir ? '' : ', fan running'}`;
  };
  const rows = panels.flatMap((panel, p) =>
    panel.days.map((day) => ({ ...grid.places[p], ...day, panel: String(p), said: said(panel.name, day) })),
  );
  const facet = { fx: 'fx', fy: 'fy' } as const;
  const { low, high, most } = scale;
  const headings = panels.map((panel, p) => ({ ...grid.places[p], name: panel.name }));
  const r = size.narrow ? 1.6 : 2;
  return draw(size, {
    height: grid.height,
    ...grid.margins,
    ...grid.facets,
    x: { domain: [0, most], label: 'fan hours so far', labelArrow: 'none', ticks: 3 },
    y: { domain: [low, high], label: null, ticks: 5, grid: true },
    color: { type: 'identity' },
    marks: [
      Plot.frame({ ...facet, stroke: 'var(--rule)', anchor: 'bottom' } as never),
      Plot.areaY(rows, {
        ...facet,
        x: 'fanHours',
        y1: 'low',
        y2: 'high',
        z: 'panel',
        fill: 'var(--rule)',
        fillOpacity: 0.35,
      }),
      Plot.ruleY([0], { stroke: 'var(--rule)' }),
      Plot.dot(rows, {
        ...facet,
        x: 'fanHours',
        y: 'points',
        r,
        fill: (d: { stillAir: boolean }) => (d.stillAir ? 'currentColor' : 'var(--paper)'),
        stroke: 'currentColor',
        strokeWidth: 0.8,
        title: 'said',
      } as never),
      Plot.text(headings, { ...facet, text: 'name', frameAnchor: 'top-left', dy: -18, fontWeight: 650 }),
    ] as never,
  });
}
