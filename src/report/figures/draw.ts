import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import type { Size } from '../page.ts';

type Options = Parameters<typeof Plot.plot>[0] & object;

/** The size of type inside a figure: the wide one is shrunk a little on mid-sized windows, the narrow one is not. */
export function typeSize(size: Size): number {
  return size.narrow ? 12 : 14;
}

/**
 * A plot as SVG text, the same for the same input. Colours are style-sheet variables, so it follows theme and print.
 *
 * @param defs  patterns that its marks are filled with, as SVG text
 * @throws Error when the library warns: a figure with a warning is not fit to be read
 */
export function draw(size: Size, options: Options, defs = ''): string {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  const warnings: string[] = [];
  const warn = console.warn;
  console.warn = (...parts: unknown[]) => warnings.push(parts.join(' '));
  let svg: Element;
  try {
    svg = Plot.plot({
      document,
      className: 'plot',
      width: size.width,
      ...options,
      style: { fontSize: `${typeSize(size)}px`, fontFamily: 'inherit', ...(options.style as object) },
    } as never);
  } finally {
    console.warn = warn;
  }
  if (warnings.length > 0) throw new Error(`the figure warns: ${warnings.join('; ')}`);
  // The style sheet of the page says all that the library's own would.
  for (const style of svg.querySelectorAll('style')) style.remove();
  // One text alternative stands on the frame around the drawing.
  svg.setAttribute('aria-hidden', 'true');
  for (const element of [svg, ...svg.querySelectorAll('*')]) {
    for (const { name, value } of [...element.attributes]) {
      if (GEOMETRY.has(name)) element.setAttribute(name, tenths(value));
    }
    element.removeAttribute('aria-label');
    if (element !== svg) element.removeAttribute('aria-hidden');
  }
  return defs === '' ? svg.outerHTML : svg.outerHTML.replace('>', `><defs>${defs}</defs>`);
}

const GEOMETRY = new Set(['d', 'transform', 'x', 'y', 'x1', 'x2', 'y1', 'y2', 'cx', 'cy', 'width', 'height']);

/** Positions to a tenth of a pixel: finer is not seen and makes pages large. */
function tenths(value: string): string {
  return value.replace(/-?\d+\.\d{2,}/g, (number) => String(Math.round(Number(number) * 10) / 10));
}

const SVG = 'http://www.w3.org/2000/svg';

/** Scales of a plot that has a time or number axis across and a number axis up. */
export interface Frame {
  x: (value: number | Date) => number;
  y: (value: number) => number;
  left: number;
  right: number;
  top: number;
  bottom: number;
  /** an SVG element with attributes, inside the plot's document */
  element(name: string, attributes: Readonly<Record<string, string | number>>, text?: string): SVGElement;
}

/** A mark drawn by hand in a plot's frame: for dense cells, one path holds thousands where the library makes an element each. */
export function ownMark(make: (frame: Frame) => readonly SVGElement[]): Plot.RenderFunction {
  return (_index, scales, _values, dimensions, context) => {
    const { document } = context as unknown as { document: Document };
    const frame: Frame = {
      x: scales.x as unknown as Frame['x'],
      y: scales.y as unknown as Frame['y'],
      left: dimensions.marginLeft,
      right: dimensions.width - dimensions.marginRight,
      top: dimensions.marginTop,
      bottom: dimensions.height - dimensions.marginBottom,
      element(name, attributes, text) {
        const made = document.createElementNS(SVG, name) as SVGElement;
        for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
        if (text !== undefined) made.textContent = text;
        return made;
      },
    };
    const group = document.createElementNS(SVG, 'g') as SVGGElement;
    group.append(...make(frame));
    return group;
  };
}

/** Marks the plot's inner box, or the given part of it, as the place of the figure's nth grid of values. */
export function readBox(
  frame: Frame,
  n: number,
  part: Partial<Pick<Frame, 'left' | 'right' | 'top' | 'bottom'>> = {},
): SVGElement {
  const { left, right, top, bottom } = { ...frame, ...part };
  const box = { x: px(left), y: px(top), width: px(right - left), height: px(bottom - top) };
  return frame.element('rect', { 'data-grid': n, ...box, fill: 'none' });
}

/** A number in a path, to a tenth of a pixel. */
export function px(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** A box as a path, its sides relative: pages hold many thousands. */
export function boxPath(x1: number, y1: number, x2: number, y2: number): string {
  // Between rounded corners, so that neighbours still meet.
  const across = px(Number(px(x2)) - Number(px(x1)));
  const down = px(Number(px(y2)) - Number(px(y1)));
  const back = across.startsWith('-') ? across.slice(1) : `-${across}`;
  return `M${px(x1)} ${px(y1)}h${across}v${down}h${back}z`;
}

/** Slanting stripes in the first category's colour: told apart from ink in black and white too. Fill with `url(#id)`. */
export function stripes(id: string): string {
  return `<pattern id="${id}" width="5" height="5" patternUnits="userSpaceOnUse"><path d="M-1 1L1 -1M0 5L5 0M4 6L6 4" stroke="var(--c1)" stroke-width="2"/></pattern>`;
}

/** A hatch pattern for what is not known; fill with `url(#id)`. */
export function hatch(frame: Frame, id: string): SVGElement {
  const defs = frame.element('defs', {});
  const pattern = frame.element('pattern', {
    id,
    width: 5,
    height: 5,
    patternUnits: 'userSpaceOnUse',
    patternTransform: 'rotate(45)',
  });
  pattern.append(frame.element('path', { d: 'M0 0V5', stroke: 'var(--rule)', 'stroke-width': 2 }));
  defs.append(pattern);
  return defs;
}
