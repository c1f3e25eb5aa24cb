import type { Figure, LegendItem, Size } from '../page.ts';
import { dayBoxes } from './day-boxes.ts';
import { boxPath, draw, type Frame, hatch, ownMark, px, readBox } from './draw.ts';
import { hourGrid } from './hour-grid.ts';
import { inParts, PANELS_A_PAGE } from './in-parts.ts';
import { type LocalSpan, monthStarts, timeAxis, timeScale } from './time-axis.ts';

/** How an hour of the fan is filled, in the order of the legend. */
const HOUR_LOOKS = ['dry', 'rewet', 'cool', 'warm', 'little', 'hatch', 'open'] as const;
export type HourLook = (typeof HOUR_LOOKS)[number];

/** What each hour of a bin's fan could do, and the hours with the fan off in which it would have paid; local ms. */
export interface HourPanel {
  name: string;
  on: Readonly<Partial<Record<HourLook, readonly LocalSpan[]>>>;
  missed: readonly LocalSpan[];
}

export interface HourClasses {
  id: string;
  title: string;
  alt: string;
  span: LocalSpan;
  panels: readonly HourPanel[];
  notShown: string | null;
}

const DAY_MS = 86_400_000;
const WORDS: Readonly<Record<HourLook, string>> = {
  dry: 'could dry the grain',
  rewet: 'could rewet it',
  cool: 'could cool it',
  warm: 'could warm it',
  little: 'next to nothing',
  hatch: 'not known',
  open: 'no grain in the bin',
};

/** Small multiples, a bin each: date across, hour of the day up, each hour of the fan filled by what its air could do to the grain. */
export function hourClasses(whole: HourClasses): Figure {
  return inParts(whole.panels, PANELS_A_PAGE - 4, (panels) => figureOf({ ...whole, panels }));
}

function figureOf(data: HourClasses): Figure {
  const shown = HOUR_LOOKS.filter((look) => data.panels.some((panel) => (panel.on[look]?.length ?? 0) > 0));
  const legend: LegendItem[] = shown.map((look) => ({ label: WORDS[look], swatch: look }));
  const missed = data.panels.some((panel) => panel.missed.length > 0);
  return {
    id: data.id,
    title: data.title,
    subtitle: `Hour of the day (local, midnight at the bottom) by date${data.panels.length > 1 ? '; a panel for each bin' : ''}`,
    alt: data.alt,
    legend: missed ? [...legend, { label: 'fan off, and would have paid', swatch: 'missed' }] : legend,
    notShown: data.notShown,
    grids: data.panels.map((panel) =>
      hourGrid(
        data.span,
        [
          { word: 'fan off, and would have paid', spans: panel.missed },
          ...shown.map((look) => ({ word: `fan on, ${WORDS[look]}`, spans: panel.on[look] ?? [] })),
        ],
        'fan off',
        panel.name,
      ),
    ),
    draw: (size) => drawHours(data, size),
  };
}

function drawHours(data: HourClasses, size: Size): string {
  const span = {
    fromMs: Math.floor(data.span.fromMs / DAY_MS) * DAY_MS,
    toMs: Math.ceil(data.span.toMs / DAY_MS) * DAY_MS,
  };
  const heading = 30;
  const high = size.narrow ? 84 : 112;
  const step = heading + high + 6;
  const inner = data.panels.length * step;
  return draw(size, {
    height: inner + 34,
    marginLeft: size.narrow ? 44 : 60,
    marginRight: size.narrow ? 6 : 12,
    marginTop: 4,
    marginBottom: 30,
    x: timeScale(span),
    // Pixels from the top; each panel makes hours of its own part.
    y: { domain: [inner, 0], axis: null },
    marks: [
      ownMark((frame) => {
        const ids = (look: string) => `${size.idPrefix}-${look}`;
        return [
          ...patterns(frame, ids),
          ...data.panels.flatMap((panel, p) => {
            const bottom = p * step + heading + high;
            const part = { x: frame.x, y: (hour: number) => frame.y(bottom - (hour / 24) * high) };
            const box = readBox(frame, p, { top: part.y(24), bottom: part.y(0) });
            return [...panelMarks(panel, frame, part, ids, monthLines(span, frame, part)), box];
          }),
        ];
      }),
      timeAxis(span, size),
    ],
  });
}

function panelMarks(
  panel: HourPanel,
  frame: Frame,
  part: Pick<Frame, 'x' | 'y'>,
  ids: (look: string) => string,
  months: string,
): SVGElement[] {
  const fills: Readonly<Record<HourLook, string>> = {
    dry: 'var(--c2)',
    rewet: `url(#${ids('rewet')})`,
    cool: `url(#${ids('cool')})`,
    warm: `url(#${ids('warm')})`,
    little: 'var(--rule)',
    hatch: `url(#${ids('unknown')})`,
    open: 'none',
  };
  const [top, bottom] = [part.y(24), part.y(0)];
  const hours = [0, 6, 12, 18, 24];
  return [
    frame.element('path', { d: months, stroke: 'var(--rule)', 'stroke-opacity': 0.35 }),
    frame.element('path', { d: dayBoxes(panel.missed, part), fill: `url(#${ids('missed')})` }),
    ...HOUR_LOOKS.flatMap((look) => {
      const spans = panel.on[look] ?? [];
      if (spans.length === 0) return [];
      const look_ = { d: dayBoxes(spans, part), fill: fills[look] };
      if (look === 'little') return [frame.element('path', { ...look_, 'fill-opacity': 0.45 })];
      if (look === 'open') return [frame.element('path', { ...look_, stroke: 'var(--soft)', 'stroke-width': 0.6 })];
      return [frame.element('path', look_)];
    }),
    frame.element('path', { d: boxPath(frame.left, top, frame.right, bottom), fill: 'none', stroke: 'var(--rule)' }),
    frame.element(
      'text',
      { x: frame.left, y: top - 9, 'text-anchor': 'start', 'font-weight': 650, fill: 'currentColor' },
      panel.name,
    ),
    ...hours.flatMap((hour) => [
      frame.element('path', {
        d: `M${frame.left - 4} ${part.y(hour)}H${frame.left}`,
        stroke: 'var(--rule)',
      }),
      ...(hour % 12 === 0
        ? [
            frame.element(
              'text',
              { x: frame.left - 7, y: part.y(hour), dy: '.35em', 'text-anchor': 'end', fill: 'currentColor' },
              `${hour}:00`,
            ),
          ]
        : []),
    ]),
  ];
}

/** A line at the start of each month, so that the panels far from the axis can be read. */
function monthLines(span: LocalSpan, frame: Frame, part: Pick<Frame, 'y'>): string {
  return monthStarts(span)
    .map((at) => `M${px(frame.x(new Date(at)))} ${px(part.y(24))}V${px(part.y(0))}`)
    .join('');
}

/** Lines that differ in direction as well as in colour, so that they can be told apart in black and white. */
function patterns(frame: Frame, ids: (look: string) => string): SVGElement[] {
  const lines = (look: string, d: string, stroke: string, size: number) => {
    const defs = frame.element('defs', {});
    const pattern = frame.element('pattern', {
      id: ids(look),
      width: size,
      height: size,
      patternUnits: 'userSpaceOnUse',
    });
    pattern.append(frame.element('path', { d, stroke, 'stroke-width': 2, fill: 'none' }));
    defs.append(pattern);
    return defs;
  };
  return [
    hatch(frame, ids('unknown')),
    lines('rewet', 'M-1 1L1 -1M0 5L5 0M4 6L6 4', 'var(--c1)', 5),
    lines('cool', 'M0 2H4', 'var(--c3)', 4),
    lines('warm', 'M2 0V4', 'var(--c4)', 4),
    lines('missed', 'M2 3H3.4', 'var(--soft)', 6),
  ];
}
