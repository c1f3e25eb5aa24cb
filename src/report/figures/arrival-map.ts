import type { Figure, LegendItem, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { drawPanel, heightOf, LEFT, type Place } from './arrival-panel.ts';
import { draw, hatch, ownMark, typeSize } from './draw.ts';

/** What a front did at a sensor; hours: fan hours since the campaign began, null where they are not known. */
export interface MapSensor {
  cable: string;
  heightM: number;
  outcome: 'passed' | 'followed' | 'held' | 'untold';
  fanHours: number | null;
  /** true: not read around its arrival, which stands by the front's pace along the cable */
  placed?: boolean;
  /** the one farthest behind the other cables at its height */
  slowest: boolean;
}

/** One bin's front. */
export interface MapPanel {
  name: string;
  /** a short line under the name */
  said: string;
  /** levelled depth when the campaign began */
  depthM: number | null;
  cables: readonly { id: string; fromCentreM: number }[];
  sensors: readonly MapSensor[];
}

export interface ArrivalMap {
  id: string;
  title: string;
  alt: string;
  kind: 'cooling' | 'warming';
  panels: readonly MapPanel[];
  notShown: string | null;
}

/** Cables up to which panels stand three and two beside each other. */
const THREE_ACROSS = 8;
const TWO_ACROSS = 14;
const GAP = 30;

/**
 * Where a front came by, and when: a panel a bin, a column a cable, the floor at the bottom. A box with a number is a
 * sensor that the front passed, standing out from the paper the more the later; other shapes are sensors that it did not pass.
 */
export function arrivalMap(data: ArrivalMap, units: Units): Figure {
  if (data.panels.length === 0) throw new Error('no bin has a front to draw');
  const has = (outcome: MapSensor['outcome']) =>
    data.panels.some((panel) => panel.sensors.some((one) => one.outcome === outcome));
  const legend: (LegendItem | false)[] = [
    {
      label: `fan hours until the front came by, the stronger the later in that bin`,
      swatch: 'color-mix(in srgb,var(--ink) 22%,var(--paper))',
    },
    has('held') && { label: 'not reached', swatch: 'cross' },
    has('followed') && {
      label: 'undated: as cool as the air already, or cooled with no front that can be dated',
      swatch: 'ring',
    },
    has('untold') && { label: 'unread: no good readings', swatch: 'hatch' },
    { label: 'surface of the grain', swatch: 'dash' },
  ];
  const some = (holds: (one: MapSensor) => boolean) => data.panels.some((panel) => panel.sensors.some(holds));
  const slowest = some((one) => one.slowest);
  const placed = some((one) => one.placed === true);
  return {
    id: data.id,
    title: data.title,
    subtitle: `Fan hours since the ${data.kind} campaign began, by height above the floor (${units.unit('length')}) and cable (with its distance from the centre)${slowest ? '; framed: the slowest for its height' : ''}${placed ? '; ~: readings lack there, placed by the front’s pace' : ''}`,
    alt: data.alt,
    legend: legend.filter((item): item is LegendItem => item !== false),
    notShown: data.notShown,
    draw: (size) => drawMap(data, units, size),
  };
}

function placesOf(panels: readonly MapPanel[], size: Size): { places: Place[]; height: number } {
  const most = Math.max(...panels.map((panel) => panel.cables.length));
  const across = size.narrow || most > TWO_ACROSS ? 1 : most > THREE_ACROSS ? 2 : 3;
  const head = 2.6 * typeSize(size) + 8;
  const foot = 2.4 * typeSize(size) + 10;
  const width = (size.width - GAP * (across - 1)) / across;
  const places: Place[] = [];
  let y = 0;
  for (let first = 0; first < panels.length; first += across) {
    const row = panels.slice(first, first + across);
    const height = Math.max(...row.map(heightOf));
    row.forEach((panel, i) => {
      places.push({ panel, x: i * (width + GAP) + LEFT, y: y + head, width: width - LEFT, height });
    });
    y += head + height + foot + 12;
  }
  return { places, height: y };
}

function drawMap(data: ArrivalMap, units: Units, size: Size): string {
  const { places, height } = placesOf(data.panels, size);
  return draw(size, {
    height,
    margin: 0,
    x: { domain: [0, 1], axis: null },
    y: { domain: [0, 1], axis: null },
    marks: [
      ownMark((frame) => {
        const id = `${size.idPrefix}-untold`;
        return [hatch(frame, id), ...places.flatMap((place) => drawPanel(frame, place, `url(#${id})`, units, size))];
      }),
    ],
  });
}
