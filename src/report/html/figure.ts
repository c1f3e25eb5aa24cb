import { escape as escapeHtml } from 'html-escaper';
import type { Figure, LegendItem, Size } from '../page.ts';
import { packedGrid } from '../read-grid.ts';
import { html, type Markup, raw } from './markup.ts';

/** The two widths that every figure is drawn for; the style sheet shows the one that fits. */
export const WIDTHS = { wide: 900, narrow: 360 } as const;

const MARKS: Readonly<Record<string, string>> = {
  line: '<path d="M0 7H22" stroke="currentColor" stroke-width="2"/>',
  dash: '<path d="M0 7H22" stroke="currentColor" stroke-width="2" stroke-dasharray="5 3"/>',
  rule: '<path d="M0 7H22" stroke="currentColor"/>',
  dotted: '<path d="M0 7H22" stroke="currentColor" stroke-width="2" stroke-dasharray="2 3"/>',
  square: '<rect x="7.5" y="3.5" width="7" height="7" fill="none" stroke="currentColor" stroke-width="1.5"/>',
  dot: '<circle cx="11" cy="7" r="4" fill="currentColor"/>',
  ring: '<circle cx="11" cy="7" r="4" fill="none" stroke="currentColor" stroke-width="1.5"/>',
  cross: '<path d="M7 3L15 11M15 3L7 11" stroke="currentColor" stroke-width="1.5"/>',
  whisker: '<path d="M0 7H22M0 3V11M22 3V11" stroke="currentColor" stroke-width="1.5"/>',
  block: '<rect width="22" height="14" fill="currentColor"/>',
  hatch: '<path d="M0 14L14 0M7 14L21 0M14 14L22 6M0 7L7 0" stroke="currentColor" stroke-width="1.2"/>',
  // What an hour's air could do to the grain, as the figure of hours fills it.
  dry: '<rect width="22" height="14" fill="var(--c2)"/>',
  rewet: '<path d="M0 14L14 0M8 14L22 0M16 14L22 8M0 6L6 0" stroke="var(--c1)" stroke-width="2.4"/>',
  cool: '<path d="M0 2H22M0 7H22M0 12H22" stroke="var(--c3)" stroke-width="2.4"/>',
  warm: '<path d="M3 0V14M9 0V14M15 0V14M21 0V14" stroke="var(--c4)" stroke-width="2.4"/>',
  little: '<rect width="22" height="14" fill="var(--rule)" fill-opacity=".45"/>',
  missed:
    '<path d="M4 4h1.6v1.6H4zM11 4h1.6v1.6H11zM18 4h1.6v1.6H18zM4 10h1.6v1.6H4zM11 10h1.6v1.6H11zM18 10h1.6v1.6H18z" fill="currentColor"/>',
  band: '<rect width="22" height="14" fill="var(--rule)" fill-opacity=".35"/>',
  stripe:
    '<rect x=".5" y=".5" width="21" height="13" fill="none" stroke="var(--ink)"/><path d="M0 14L14 0M8 14L22 0M16 14L22 8M0 6L6 0" stroke="var(--c1)" stroke-width="2.4"/>',
  open: '<rect x=".5" y=".5" width="21" height="13" fill="none" stroke="currentColor"/>',
};

function legendItem(item: LegendItem): Markup {
  const mark =
    MARKS[item.swatch] ??
    html`<rect x=".5" y=".5" width="21" height="13" fill="${item.swatch}" stroke="var(--rule)"/>`.text;
  return html`<li><svg width="22" height="14" viewBox="0 0 22 14" aria-hidden="true">${raw(mark)}</svg>${item.label}</li>`;
}

/** Steps of a colour map as one ramp, low to high, its edges under it; what else there is beside it. */
function renderLegend(items: readonly LegendItem[]): Markup | false {
  const steps = items.filter((item) => item.edges !== undefined);
  const others = items.filter((item) => item.edges === undefined);
  const step = (item: LegendItem, i: number) =>
    html`<li><svg viewBox="0 0 40 14" preserveAspectRatio="none" aria-hidden="true"><rect width="40" height="14" fill="${item.swatch}"/></svg><span aria-hidden="true">${item.edges?.[0] ?? ''}</span>${i === steps.length - 1 && html`<span class="last" aria-hidden="true">${item.edges?.[1] ?? ''}</span>`}<span class="heard">${item.label}</span></li>`;
  return (
    items.length > 0 &&
    html`<div class="keyed">${steps.length > 0 && html`<ol class="ramp">${steps.map(step)}</ol>`}${others.length > 0 && html`<ul class="legend">${others.map(legendItem)}</ul>`}</div>`
  );
}

/** A figure at both widths with its finding, unit, legend and what it leaves out. @throws what drawing throws */
export function renderFigure(figure: Figure, id: string): Markup {
  const draw = (name: 'wide' | 'narrow') => {
    const size: Size = { width: WIDTHS[name], narrow: name === 'narrow', idPrefix: `${id}-${name}` };
    return html`<div class="at-${name}" role="img" aria-label="${figure.alt}">${raw(figure.draw(size))}</div>`;
  };
  const reads =
    figure.grids === undefined
      ? null
      : raw(` data-reads="${escapeHtml(JSON.stringify(figure.grids.map(packedGrid)))}"`);
  return html`<figure id="${id}"${figure.whole === true && html` class="whole"`}${reads}><figcaption><h3>${figure.title}</h3><p>${figure.subtitle}</p></figcaption>
${renderLegend(figure.legend)}
${draw('wide')}${draw('narrow')}
${figure.notShown !== null && html`<p class="note">${figure.notShown}</p>`}</figure>`;
}
