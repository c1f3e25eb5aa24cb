import type { Figure } from '../page.ts';
import { drawAcross, SIGN_SWATCHES } from './free-across.ts';
import { drawBars } from './free-bars.ts';
import { type FreeFigure, hasIntervals, TOGETHER } from './free-figure-data.ts';

/** A figure by a notebook's short orders. */
export function freeFigure(data: FreeFigure): Figure {
  const { id, title, subtitle, alt, notShown, series, form, level } = data;
  const shapes = form === 'dots' && series.length > 1 && series.length <= TOGETHER.dots;
  return {
    id,
    title,
    subtitle,
    alt,
    notShown,
    legend: [
      ...(shapes ? series.map(({ name }, i) => ({ label: name ?? '', swatch: SIGN_SWATCHES[i] })) : []),
      ...(level === null ? [] : [{ label: level.label, swatch: 'dash' }]),
      ...(hasIntervals(data) ? [{ label: data.ranges, swatch: form === 'line' ? 'band' : 'whisker' }] : []),
    ],
    draw: (size) => (data.x.kind === 'words' ? drawBars(data, data.x.order, size) : drawAcross(data, size)),
  };
}
