import type { Page } from '../page.ts';
import { html, type Markup } from './markup.ts';

/** The first sheet: what it is of, for whom and by whom, of which day. */
export function renderCover(page: Page): Markup {
  const { cover, units, madeBy } = page;
  if (cover === undefined) return html``;
  const made = units.date(madeBy.generatedAtMs);
  const rows: [string, string | null][] = [
    ['Prepared for', cover.preparedFor],
    ['Prepared by', cover.preparedBy],
    ['Date', cover.date],
    ['Worked out', made],
  ];
  return html`<section class="cover" aria-labelledby="title">
<p class="season">${madeBy.seasonTitle}</p>
<h1 id="title">${page.title}</h1>
<p class="subtitle">${cover.subtitle}</p>
<dl class="facts">${rows.map(([term, text]) => text !== null && text !== '' && html`<div><dt>${term}</dt><dd>${text}</dd></div>`)}</dl>
<p class="about">${cover.about}</p>
</section>`;
}

/** The line to sign, at the end. */
export function renderSignature(page: Page, number: string): Markup {
  const { cover } = page;
  return html`<section class="signature" aria-labelledby="signature"><h2 id="signature">${number}Signature</h2>
<p>I have read this report and stand by what it says, within the intervals it states.</p>
<dl><div><dt>Name</dt><dd>${cover?.preparedBy ?? ''}</dd></div><div><dt>Signature</dt><dd></dd></div><div><dt>Date</dt><dd></dd></div></dl></section>`;
}
