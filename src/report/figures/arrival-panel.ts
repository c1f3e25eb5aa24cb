import type { Size } from '../page.ts';
import type { Units } from '../units.ts';
import type { MapPanel, MapSensor } from './arrival-map.ts';
import { type Frame, px, typeSize } from './draw.ts';
import { SIGN_WIDTH, spacedLabels } from './spaced-labels.ts';

/** Height of a sensor's box, px. */
const BOX = 17;
/** Room for the heights, px. */
export const LEFT = 34;

/** Where a panel's plot lies, px. */
export interface Place {
  panel: MapPanel;
  x: number;
  y: number;
  width: number;
  height: number;
}

/** So high that boxes of a cable do not lie on each other. */
export function heightOf(panel: MapPanel): number {
  const topM = topOf(panel);
  const gaps = panel.cables.flatMap((cable) => {
    const heights = panel.sensors.filter((one) => one.cable === cable.id).map((one) => one.heightM);
    const sorted = [...heights].sort((a, b) => a - b);
    return sorted.slice(1).map((height, i) => height - sorted[i]);
  });
  const least = Math.min(topM, ...gaps.filter((gap) => gap > 0));
  return Math.min(480, Math.max(150, (topM / least) * (BOX + 1)));
}

function topOf({ depthM, sensors }: MapPanel): number {
  return Math.max(depthM ?? 0, ...sensors.map((one) => one.heightM), 0.1) * 1.02;
}

/** One bin: name, what is said of it, heights, floor, surface, and a mark for each sensor. */
export function drawPanel(frame: Frame, place: Place, untold: string, units: Units, size: Size): SVGElement[] {
  const { panel, x, y, width, height } = place;
  const bottom = y + height;
  const topM = topOf(panel);
  const up = (heightM: number) => bottom - (heightM / topM) * height;
  const step = width / panel.cables.length;
  const at = (cable: string) => x + (panel.cables.findIndex((one) => one.id === cable) + 0.5) * step;
  const type = typeSize(size);
  const clipped = (words: string, room: number) =>
    words.length * SIGN_WIDTH * type <= room
      ? words
      : `${words.slice(0, Math.max(1, Math.floor(room / (SIGN_WIDTH * type)) - 1))}…`;
  const text = (words: string, tx: number, ty: number, more: Readonly<Record<string, string | number>> = {}) =>
    frame.element('text', { x: px(tx), y: px(ty), fill: 'var(--ink)', 'text-anchor': 'start', ...more }, words);
  const line = (ly: number, more: Readonly<Record<string, string | number>>) =>
    frame.element('path', { d: `M${px(x)} ${px(ly)}H${px(x + width)}`, stroke: 'var(--ink)', fill: 'none', ...more });
  const left = x - LEFT;
  const marks = ticksOf(units.shown('length', topM));
  const ticks = marks.flatMap((mark) => {
    const ty = bottom - (mark / units.shown('length', topM)) * height;
    return [
      line(ty, { stroke: 'var(--rule)', 'stroke-opacity': 0.35 }),
      text(String(mark), x - 6, ty + 0.35 * type, { 'text-anchor': 'end', fill: 'var(--soft)' }),
    ];
  });
  const longest = Math.max(...panel.sensors.map((one) => one.fanHours ?? 0), 1e-6);
  return [
    text(clipped(panel.name, width + LEFT), left, y - 1.55 * type - 6, { 'font-weight': 650 }),
    text(clipped(panel.said, width + LEFT), left, y - 0.25 * type - 6, { fill: 'var(--soft)' }),
    ...ticks,
    line(bottom, { 'stroke-width': 2 }),
    ...(panel.depthM === null ? [] : [line(up(panel.depthM), { 'stroke-width': 1.5, 'stroke-dasharray': '5 3' })]),
    ...spacedLabels(
      panel.cables.map((one) => one.id),
      step,
      type,
    ).flatMap((label) => [
      text(label.text, x + (label.at + 0.5) * step, bottom + type + 4, { 'text-anchor': 'middle', 'font-weight': 650 }),
    ]),
    ...spacedLabels(
      panel.cables.map((one) => centreText(one.fromCentreM, units)),
      step,
      type,
    ).map((label) =>
      text(label.text, x + (label.at + 0.5) * step, bottom + 2.2 * type + 4, {
        'text-anchor': 'middle',
        fill: 'var(--soft)',
      }),
    ),
    ...panel.sensors.flatMap((one) =>
      titled(
        frame,
        saidOf(one, panel.name, units),
        drawSensor(frame, one, at(one.cable), Math.min(up(one.heightM), bottom - BOX / 2 - 2), {
          step,
          longest,
          untold,
          units,
          type,
        }),
      ),
    ),
  ];
}

/** A sensor's marks as one group with the words that pointer and keys read out. */
function titled(frame: Frame, words: string, marks: readonly SVGElement[]): SVGElement[] {
  const group = frame.element('g', {});
  group.append(frame.element('title', {}, words), ...marks);
  return [group];
}

function saidOf(one: MapSensor, name: string, units: Units): string {
  const place = `${name}, ${one.cable} at ${units.say('length', one.heightM)}`;
  if (one.outcome === 'held') return `${place}: not reached`;
  if (one.outcome === 'followed') return `${place}: undated`;
  if (one.outcome === 'untold') return `${place}: no good readings`;
  const about = one.placed === true ? 'about ' : '';
  const hours = one.fanHours === null ? 'passed' : `after ${about}${units.say('hours', one.fanHours)} of fan`;
  return `${place}: ${hours}${one.slowest ? ', the slowest for its height' : ''}`;
}

function centreText(fromCentreM: number, units: Units): string {
  return fromCentreM < 0.3 ? 'centre' : String(Math.round(units.shown('length', fromCentreM)));
}

interface SensorLook {
  step: number;
  longest: number;
  untold: string;
  units: Units;
  type: number;
}

function drawSensor(frame: Frame, one: MapSensor, cx: number, cy: number, look: SensorLook): SVGElement[] {
  const { step, longest, units, type } = look;
  const ink = { stroke: 'var(--ink)', fill: 'none' };
  if (one.outcome === 'held') {
    const r = 5.5;
    const d = `M${px(cx - r)} ${px(cy - r)}L${px(cx + r)} ${px(cy + r)}M${px(cx + r)} ${px(cy - r)}L${px(cx - r)} ${px(cy + r)}`;
    return [frame.element('path', { d, ...ink, 'stroke-width': 2.5 })];
  }
  if (one.outcome === 'followed')
    return [frame.element('circle', { cx: px(cx), cy: px(cy), r: 4, ...ink, 'stroke-width': 1.3 })];
  const width = Math.min(42, step - 4);
  const box = { x: px(cx - width / 2), y: px(cy - BOX / 2), width: px(width), height: BOX, rx: 3 };
  if (one.outcome === 'untold') return [frame.element('rect', { ...box, fill: look.untold, stroke: 'var(--rule)' })];
  const share = one.fanHours === null ? 0 : one.fanHours / longest;
  const about = one.placed === true ? '~' : '';
  const words = one.fanHours === null ? '–' : `${about}${units.number('hours', one.fanHours)}`;
  const paper = frame.element('rect', { ...box, fill: 'var(--paper)' });
  const tint = frame.element('rect', {
    ...box,
    fill: 'var(--ink)',
    'fill-opacity': Math.round(100 * (0.05 + 0.33 * share)) / 100,
    stroke: 'var(--ink)',
    'stroke-width': one.slowest ? 2 : 0,
  });
  const room = words.length * 0.5 * type <= width;
  if (!room) return [paper, tint];
  const label = {
    x: px(cx),
    y: px(cy + 0.33 * type),
    'text-anchor': 'middle',
    fill: 'var(--ink)',
    'font-size': 0.9 * type,
  };
  return [paper, tint, frame.element('text', { ...label, ...(one.slowest ? { 'font-weight': 700 } : {}) }, words)];
}

/** Three to six round heights from the floor up, in the shown unit. */
function ticksOf(top: number): number[] {
  const step = [0.5, 1, 2, 5, 10, 20].find((one) => top / one <= 6) ?? 50;
  return Array.from({ length: Math.floor(top / step) + 1 }, (_, i) => i * step);
}
