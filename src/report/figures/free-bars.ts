import * as Plot from '@observablehq/plot';
import { monthText } from '../date-text.ts';
import type { Size } from '../page.ts';
import { draw, typeSize } from './draw.ts';
import { type FreeFigure, hasIntervals, TOGETHER } from './free-figure-data.ts';
import { SIGN_WIDTH } from './spaced-labels.ts';

/** Words down the side, a bar or a dot for each; of several series each word has one beside the other. */
export function drawBars(data: FreeFigure, order: readonly string[], size: Size): string {
  const several = data.series.length > 1;
  const type = typeSize(size);
  const rows = data.series.flatMap(({ name, points }) =>
    points
      .filter(({ y }) => !Number.isNaN(y))
      .map((point) => ({
        word: String(point.x),
        series: name ?? '',
        y: point.y,
        low: point.low ?? point.y,
        high: point.high ?? point.y,
        text: `${several && name !== null ? `${name}: ` : ''}${data.said(point.y)}`,
      })),
  );
  const dots = data.form === 'dots';
  const ends = rows.flatMap(({ low, high }) => [low, high]);
  const least = Math.min(0, ...ends, ...(data.level === null ? [] : [data.level.at]));
  const most = Math.max(0, ...ends, ...(data.level === null ? [] : [data.level.at])) || (least < 0 ? 0 : 1);
  const nameOf = (word: string) => (/^\d{4}-\d{2}$/.test(word) ? monthText(word) : word);
  const longest = Math.max(0, ...order.map((word) => nameOf(word).length));
  const said = Math.max(0, ...rows.map(({ text }) => text.length));
  const step = (several ? 22 * data.series.length + 14 : size.narrow ? 34 : 32) + (size.narrow ? type : 0);
  const place = several ? { fy: 'word', y: 'series' } : { y: 'word' };
  return draw(size, {
    height: order.length * step + 60,
    marginLeft: size.narrow ? 8 : Math.min(280, 16 + longest * type * SIGN_WIDTH),
    marginRight: Math.min(size.width / 3, 16 + said * type * SIGN_WIDTH),
    marginTop: size.narrow ? 8 + type : 8,
    marginBottom: 46,
    x: { domain: [least, most], label: null, grid: true, ticks: size.narrow ? 3 : 7 },
    y: {
      domain: several ? data.series.map(({ name }) => name ?? '') : [...order],
      axis: null,
      padding: size.narrow ? 0.5 : 0.3,
    },
    ...(several ? { fy: { domain: [...order], axis: null, padding: size.narrow ? 0.3 : 0.15 } } : {}),
    marks: [
      dots
        ? Plot.dot(rows, { x: 'y', ...place, r: 4.5, fill: 'currentColor' } as never)
        : Plot.barX(rows, {
            x: 'y',
            ...place,
            fillOpacity: 0.7,
            fill: several ? (d: { series: string }) => fillOf(data, d.series) : 'var(--c1)',
          } as never),
      hasIntervals(data) ? Plot.ruleY(rows, { x1: 'low', x2: 'high', ...place, strokeWidth: 1.5 } as never) : null,
      Plot.ruleX([0]),
      data.level === null ? null : Plot.ruleX([data.level.at], { strokeDasharray: '5 3' }),
      Plot.text(rows, { x: 'high', ...place, text: 'text', textAnchor: 'start', dx: 8 } as never),
      size.narrow
        ? Plot.text(
            order.map((word) => ({ word })),
            {
              ...(several ? { fy: 'word', frameAnchor: 'top-left' } : { x: least, y: 'word' }),
              text: (d: { word: string }) => nameOf(d.word),
              textAnchor: 'start',
              dy: several ? -type / 2 - 2 : -step / 2 + 5,
            } as never,
          )
        : several
          ? Plot.axisFy({ tickSize: 0, label: null, anchor: 'left', tickFormat: nameOf } as never)
          : Plot.axisY({ tickSize: 0, label: null, tickFormat: nameOf }),
    ] as never,
  });
}

function fillOf({ series }: FreeFigure, name: string): string {
  return `var(--c${(series.findIndex((one) => one.name === name) % TOGETHER.bars) + 1})`;
}
