import * as Plot from '@observablehq/plot';
import type { Estimate } from '../../base/estimate.ts';
import type { Figure, Size } from '../page.ts';
import type { Quantity } from '../quantities.ts';
import type { Units } from '../units.ts';
import { draw, stripes, typeSize } from './draw.ts';
import { fittingTicks } from './fitting-ticks.ts';

/** What comes in and what goes off, one under the other, down to what is left; all in the shown unit. */
export interface Waterfall {
  id: string;
  title: string;
  subtitle: string;
  alt: string;
  quantity: Quantity;
  /** above zero comes in, below goes off */
  steps: readonly { name: string; value: number }[];
  /** the sum of the steps, with its interval */
  left: { name: string; of: Estimate };
  notShown: string | null;
}

interface Bar {
  key: string;
  name: string;
  from: number;
  to: number;
  kind: 'in' | 'off' | 'left';
  text: string;
  /** where the words at the bar stand: right of all that is drawn in its row */
  end: number;
  said: string;
}

/** Each step begins where the one above it ended; the last bar is what is left, from zero, with its interval. */
export function waterfall(data: Waterfall, units: Units): Figure {
  const { quantity, left } = data;
  let at = 0;
  const bars: Bar[] = data.steps.map(({ name, value }, i) => {
    const from = at;
    at += value;
    const text = `${value > 0 ? '+' : ''}${units.number(quantity, value)}`;
    const said = `${name}: ${text} ${units.unit(quantity)}`;
    return { key: `${i}`, name, from, to: at, kind: value >= 0 ? 'in' : 'off', text, end: Math.max(from, at), said };
  });
  const [low, high] = left.of.interval ?? [at, at];
  const text = units.amount(quantity, left.of);
  const end = Math.max(high, at, 0);
  const said = `${left.name}: ${text} ${units.unit(quantity)}`;
  bars.push({ key: 'left', name: left.name, from: 0, to: at, kind: 'left', text, end, said });
  return {
    id: data.id,
    title: data.title,
    subtitle: data.subtitle,
    alt: data.alt,
    legend: [
      { label: 'comes in', swatch: 'stripe' },
      { label: 'goes off', swatch: 'open' },
      { label: 'is left', swatch: 'block' },
      ...(left.of.interval === null ? [] : [{ label: '90 % interval', swatch: 'whisker' }]),
    ],
    notShown: data.notShown,
    draw: (size) => drawBars(bars, { low, high }, units.unit(quantity), size),
  };
}

function drawBars(bars: readonly Bar[], whisker: { low: number; high: number }, unit: string, size: Size): string {
  const { narrow } = size;
  const step = narrow ? 46 : 34;
  const ends = bars.flatMap(({ from, to }) => [from, to]);
  const longest = Math.max(...bars.map(({ name }) => name.length));
  const stripeId = `${size.idPrefix}-stripes`;
  const fills = { in: `url(#${stripeId})`, off: 'var(--paper)', left: 'var(--ink)' };
  const inset = narrow ? { insetTop: 24, insetBottom: 4 } : { insetTop: 6, insetBottom: 6 };
  const dy = narrow ? 10 : 0;
  const rim = { stroke: 'var(--paper)', strokeWidth: 4, fill: 'currentColor' } as const;
  const low = Math.min(0, whisker.low, ...ends);
  // Each step hangs from the end of the one above.
  const joints = bars.slice(1).map((bar, i) => ({ x: bars[i].to, y1: bars[i].key, y2: bar.key }));
  const [marginLeft, marginRight] = narrow ? [10, 16] : [Math.min(300, 20 + longest * 8), 170];
  const domain: [number, number] = [low, Math.max(whisker.high, ...ends)];
  const acrossPx = size.width - marginLeft - marginRight;
  return draw(
    size,
    {
      height: bars.length * step + 62,
      marginLeft,
      marginRight,
      marginTop: 6,
      marginBottom: 50,
      x: {
        domain,
        label: `${unit} →`,
        grid: true,
        ticks: fittingTicks(domain, narrow ? 3 : 7, acrossPx, typeSize(size)),
      },
      y: { domain: bars.map(({ key }) => key), axis: null, padding: 0 },
      marks: [
        Plot.ruleX([0]),
        Plot.link(joints, { x1: 'x', x2: 'x', y1: 'y1', y2: 'y2', stroke: 'var(--rule)', dy } as never),
        Plot.barX(bars, {
          x1: 'from',
          x2: 'to',
          y: 'key',
          fill: (bar: Bar) => fills[bar.kind],
          stroke: 'var(--ink)',
          title: 'said',
          ...inset,
        }),
        Plot.link(whisker.high > whisker.low ? [whisker] : [], {
          x1: 'low',
          x2: 'high',
          y: () => 'left',
          stroke: 'var(--paper)',
          strokeWidth: 6,
          dy,
        } as never),
        Plot.link(whisker.high > whisker.low ? [whisker] : [], {
          x1: 'low',
          x2: 'high',
          y: () => 'left',
          strokeWidth: 2.5,
          dy,
        } as never),
        ...(narrow
          ? [
              Plot.text(bars, {
                x: () => low,
                y: 'key',
                text: (bar: Bar) => `${bar.name}: ${bar.text}`,
                textAnchor: 'start',
                dy: -10,
                dx: 4,
                fontWeight: 'normal',
                ...rim,
              }),
            ]
          : [
              Plot.axisY({
                tickFormat: (key: string) => bars.find((bar) => bar.key === key)?.name ?? '',
                tickSize: 0,
                label: null,
              }),
              Plot.text(bars, { x: 'end', y: 'key', text: 'text', textAnchor: 'start', dx: 10, ...rim }),
            ]),
      ],
      color: { type: 'identity' },
    },
    stripes(stripeId),
  );
}
