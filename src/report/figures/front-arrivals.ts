import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';

/** Where and when a campaign's front came by. */
export interface FrontArrivals {
  id: string;
  title: string;
  kind: 'cooling' | 'warming';
  /** fan hours of the campaign */
  fanHours: number;
  arrivals: readonly { cable: string; heightM: number; fanHours: number | null }[];
  depthM: number | null;
}

/** Lines differ by dash as well as by colour. */
const DASHES = ['none', '7 3', '2 3', '9 3 2 3', '4 2'] as const;

interface Row {
  cable: string;
  height: number;
  hours: number;
}

/** Fan hours until the front came by, by height; a line a cable, named at its end; sensors it never reached at the right. */
export function frontArrivals(data: FrontArrivals, units: Units): Figure {
  const reached: Row[] = data.arrivals
    .flatMap(({ cable, heightM, fanHours }) =>
      fanHours === null ? [] : [{ cable, height: units.shown('length', heightM), hours: fanHours }],
    )
    .sort((a, b) => a.height - b.height);
  const never: Row[] = data.arrivals
    .filter((one) => one.fanHours === null)
    .map((one) => ({ cable: one.cable, height: units.shown('length', one.heightM), hours: 0 }));
  const last = reached.reduce((most, one) => Math.max(most, one.hours), 0);
  return {
    id: data.id,
    title: data.title,
    subtitle: `Fan hours since the campaign began until the ${data.kind} front came by, by height (${units.unit('length')}); lines are cables`,
    alt:
      reached.length === 0
        ? 'The front reached no sensor.'
        : `The front reached ${reached.length} of ${data.arrivals.length} sensors, the last after ${units.say('hours', last)} of fan running.`,
    legend:
      never.length === 0
        ? []
        : [{ label: `not seen to arrive by the end, ${units.say('hours', data.fanHours)}`, swatch: 'cross' }],
    notShown: null,
    draw: (size) => drawArrivals(data, reached, never, units, size),
  };
}

/** Names at the ends of lines, moved apart where they would lie on each other; `at` and `end` in fan hours. */
function spread(ends: readonly Row[], perHour: number, roomPx: number, end: number): (Row & { at: number })[] {
  const placed: (Row & { at: number })[] = [];
  for (const row of [...ends].sort((a, b) => a.hours - b.hours)) {
    let at = row.hours;
    for (const other of placed) {
      if (Math.abs(other.height - row.height) < 1) at = Math.max(at, other.at + roomPx / perHour);
    }
    placed.push({ ...row, at });
  }
  // Names pushed past the end of the axis would lie on the marks beside it: their whole row moves back.
  for (const last of placed.filter((one) => one.at > end)) {
    const over = Math.max(0, last.at - end);
    for (const one of placed) if (Math.abs(one.height - last.height) < 1) one.at -= over;
  }
  return placed;
}

/** Up to three cables by name, else how many. */
function namesOf(cables: readonly string[], all: number): string {
  if (cables.length === all && all > 1) return `all ${all}`;
  return cables.length > 3 ? `${cables.length} of ${all}` : cables.join(', ');
}

function drawArrivals(data: FrontArrivals, reached: Row[], never: Row[], units: Units, size: Size): string {
  const cables = [...new Set(data.arrivals.map((one) => one.cable))];
  // Beyond five, colours and dashes would repeat: all lines in ink, told apart by their names.
  const colour = (cable: string) => (cables.length > 5 ? 'currentColor' : `var(--c${cables.indexOf(cable) + 1})`);
  const dash = (cable: string) => (cables.length > 5 ? 'none' : DASHES[cables.indexOf(cable)]);
  const top = Math.max(
    ...data.arrivals.map((one) => units.shown('length', one.heightM)),
    data.depthM === null ? 0 : units.shown('length', data.depthM),
  );
  // The axis ends a little after the last arrival: a front is often through long before the fan stops.
  const end = Math.min(data.fanHours, 1.08 * Math.max(1, ...reached.map((row) => row.hours)));
  const left = size.narrow ? 34 : 56;
  const right = never.length > 0 ? (size.narrow ? 72 : 120) : size.narrow ? 14 : 40;
  const perHour = (size.width - left - right) / end;
  const ends = spread(
    cables.flatMap((cable) => reached.filter((row) => row.cable === cable).slice(-1)),
    perHour,
    9 * Math.max(...cables.map((cable) => cable.length)) + 4,
    end,
  );
  const missed = [...new Set(never.map((row) => row.height))].map((height) => ({
    height,
    names: namesOf(
      never.filter((row) => row.height === height).map((row) => row.cable),
      cables.length,
    ),
  }));
  return draw(size, {
    height: size.narrow ? 280 : 360,
    marginLeft: left,
    marginRight: right,
    marginTop: 26,
    marginBottom: 44,
    x: { domain: [0, end], label: 'fan hours', labelArrow: 'none', grid: true, ticks: size.narrow ? 4 : 8 },
    y: {
      domain: [0, top],
      label: size.narrow ? units.unit('length') : `${units.unit('length')} above the floor`,
      labelArrow: 'none',
      ticks: 5,
    },
    marks: [
      Plot.ruleY([0], { strokeWidth: 2 }),
      data.depthM === null ? null : Plot.ruleY([units.shown('length', data.depthM)], { strokeDasharray: '5 3' }),
      cables.map((cable) =>
        Plot.line(
          reached.filter((row) => row.cable === cable),
          {
            x: 'hours',
            y: 'height',
            stroke: colour(cable),
            strokeWidth: 1.8,
            strokeDasharray: dash(cable),
          },
        ),
      ),
      Plot.dot(reached, {
        x: 'hours',
        y: 'height',
        r: 3.5,
        fill: (d: Row) => colour(d.cable),
        stroke: 'var(--paper)',
      } as never),
      Plot.dot(never, {
        x: () => end,
        y: 'height',
        symbol: 'times',
        r: 4,
        stroke: 'currentColor',
        dx: size.narrow ? 12 : 18,
      }),
      Plot.text(missed, {
        x: () => end,
        y: 'height',
        text: 'names',
        textAnchor: 'start',
        dx: size.narrow ? 20 : 28,
      }),
      Plot.text(ends, { x: 'at', y: 'height', text: 'cable', dy: -12, fontWeight: 650 }),
    ].map((mark) => mark) as never,
  });
}
