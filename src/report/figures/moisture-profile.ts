import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import type { Units } from '../units.ts';
import { draw } from './draw.ts';

/** Moisture of each sensor at start and end; fractions and m. */
export interface MoistureProfile {
  id: string;
  title: string;
  sensors: readonly { cable: string; heightM: number; start: number | null; end: number | null }[];
  depthM: number | null;
}

/** Start and end moisture by height, a panel a cable; the floor at the bottom. */
export function moistureProfile(data: MoistureProfile, units: Units): Figure {
  const known = data.sensors.filter((one) => one.start !== null || one.end !== null);
  if (known.length === 0) throw new Error('no sensor has a moisture at the start or the end');
  const left = data.sensors.length - known.length;
  const range = (values: (number | null)[]) => {
    const of = values.filter((value): value is number => value !== null);
    return of.length === 0
      ? 'not known'
      : `${units.number('moisture', Math.min(...of))} to ${units.say('moisture', Math.max(...of))}`;
  };
  return {
    id: data.id,
    title: data.title,
    subtitle: `Moisture, % wet basis, at start and end by height above the floor (${units.unit('length')}); a panel for each cable`,
    alt: `Moisture by height: at the start ${range(known.map((one) => one.start))}, at the end ${range(known.map((one) => one.end))}.`,
    legend: [
      { label: 'start', swatch: 'ring' },
      { label: 'end', swatch: 'dot' },
    ],
    notShown: left === 0 ? null : `${left} of ${data.sensors.length} sensors not shown: no reading that could be used.`,
    whole: new Set(known.map((one) => one.cable)).size > 2,
    draw: (size) => drawProfile(data, known, units, size),
  };
}

function drawProfile(data: MoistureProfile, known: MoistureProfile['sensors'], units: Units, size: Size): string {
  const pct = (value: number | null) => (value === null ? Number.NaN : units.shown('moisture', value));
  const rows = known.map((one) => ({
    cable: one.cable,
    height: units.shown('length', one.heightM),
    start: pct(one.start),
    end: pct(one.end),
    said: `${one.cable}, ${units.say('length', one.heightM)}: ${units.number('moisture', one.start)} to ${units.say('moisture', one.end)}`,
  }));
  const cables = [...new Set(rows.map((row) => row.cable))];
  const top = Math.max(...rows.map((row) => row.height), data.depthM === null ? 0 : units.shown('length', data.depthM));
  const all = rows.flatMap((row) => [row.start, row.end]).filter((value) => !Number.isNaN(value));
  const across = size.narrow ? 'fy' : 'fx';
  const panel = size.narrow ? 150 : 300;
  return draw(size, {
    height: size.narrow ? cables.length * panel + 60 : panel + 80,
    marginLeft: size.narrow ? 34 : 56,
    marginRight: size.narrow ? 70 : 12,
    marginTop: 30,
    marginBottom: 44,
    [across]: { domain: cables, label: null, axis: size.narrow ? 'right' : 'top' },
    x: {
      domain: [Math.floor(Math.min(...all)), Math.ceil(Math.max(...all))],
      label: 'moisture, %',
      labelArrow: 'none',
      grid: true,
      ticks: size.narrow ? 5 : Math.max(2, Math.floor(8 / cables.length)),
    },
    y: {
      domain: [0, top],
      label: units.unit('length'),
      labelArrow: 'none',
      ticks: 5,
    },
    marks: [
      Plot.ruleY([0], { strokeWidth: 2 }),
      data.depthM === null ? null : Plot.ruleY([units.shown('length', data.depthM)], { strokeDasharray: '5 3' }),
      Plot.link(rows, {
        filter: (d) => !Number.isNaN(d.start) && !Number.isNaN(d.end),
        x1: 'start',
        x2: 'end',
        y: 'height',
        [across]: 'cable',
        stroke: 'var(--rule)',
      }),
      Plot.dot(rows, {
        x: 'start',
        y: 'height',
        [across]: 'cable',
        r: 4,
        fill: 'var(--paper)',
        stroke: 'currentColor',
        title: 'said',
      }),
      Plot.dot(rows, { x: 'end', y: 'height', [across]: 'cable', r: 4, fill: 'currentColor', title: 'said' }),
    ],
  });
}
