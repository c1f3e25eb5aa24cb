import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import { dayBoxes } from './day-boxes.ts';
import { boxPath, draw, hatch, ownMark, readBox } from './draw.ts';
import { hourGrid } from './hour-grid.ts';
import { type LocalSpan, timeAxis, timeScale } from './time-axis.ts';

/** When a fan ran: spans on and spans not known, local ms. */
export interface FanClock {
  id: string;
  title: string;
  alt: string;
  span: LocalSpan;
  on: readonly LocalSpan[];
  unknown: readonly LocalSpan[];
  notShown: string | null;
}

const DAY_MS = 86_400_000;

/** Date across, hour of the day up: when the fan ran. Ink where it ran, hatched where that is not known. */
export function fanClock(data: FanClock): Figure {
  return {
    id: data.id,
    title: data.title,
    subtitle: 'Hour of the day (local, midnight at the bottom) by date',
    alt: data.alt,
    legend: [
      { label: 'fan ran', swatch: 'block' },
      { label: 'not known', swatch: 'hatch' },
    ],
    notShown: data.notShown,
    grids: [
      hourGrid(
        data.span,
        [
          { word: 'fan ran', spans: data.on },
          { word: 'not known', spans: data.unknown },
        ],
        'fan off',
      ),
    ],
    draw: (size) => drawClock(data, size),
  };
}

function drawClock(data: FanClock, size: Size): string {
  const span = {
    fromMs: Math.floor(data.span.fromMs / DAY_MS) * DAY_MS,
    toMs: Math.ceil(data.span.toMs / DAY_MS) * DAY_MS,
  };
  return draw(size, {
    height: size.narrow ? 190 : 240,
    marginLeft: size.narrow ? 40 : 96,
    marginRight: size.narrow ? 6 : 12,
    marginTop: 12,
    marginBottom: 28,
    x: timeScale(span),
    y: { domain: [0, 24], label: null },
    marks: [
      ownMark((frame) => {
        const id = `${size.idPrefix}-unknown`;
        return [
          hatch(frame, id),
          frame.element('path', { d: dayBoxes(data.unknown, frame), fill: `url(#${id})` }),
          frame.element('path', { d: dayBoxes(data.on, frame), fill: 'var(--ink)' }),
          frame.element('path', {
            d: boxPath(frame.left, frame.top, frame.right, frame.bottom),
            fill: 'none',
            stroke: 'var(--rule)',
          }),
          readBox(frame, 0),
        ];
      }),
      timeAxis(span, size),
      Plot.axisY({ ticks: [0, 6, 12, 18, 24], tickFormat: (hour: number) => `${hour}:00`, label: null }),
    ],
  });
}
