import type { Page, Section } from '../page.ts';
import { reasonOf } from '../section.ts';
import { renderFigure } from './figure.ts';
import { html, type Markup, slug } from './markup.ts';
import { renderTable } from './table.ts';

export function renderFailure(reason: string): Markup {
  return html`<p class="failure" role="note"><strong>This part failed.</strong> ${reason} The other parts of the page stand.</p>`;
}

/**
 * A section as HTML, and what failed in it; a figure that cannot be drawn leaves the rest of the section.
 *
 * @param head  in place of its heading and lead
 */
export function renderSection(section: Section, page: Page, head?: Markup): { markup: Markup; failures: string[] } {
  const id = slug(section.id);
  const failures: string[] = [];
  const safely = (make: () => Markup): Markup => {
    try {
      return make();
    } catch (error) {
      failures.push(`${section.title}: ${reasonOf(error)}`);
      return renderFailure(reasonOf(error));
    }
  };
  if (section.failure !== undefined) failures.push(`${section.title}: ${section.failure}`);
  const tableId = (stem: string) => `${id}-${slug(stem)}`;
  const { table, figures = [], tables = [], entries = [], notes = [] } = section;
  const shown = html`${figures.map((figure) => safely(() => renderFigure(figure, `${id}-${slug(figure.id)}`)))}
${tables.map((one) => safely(() => renderTable(one, page.units, tableId(one.id))))}`;
  const body = html`${table !== undefined && safely(() => renderTable(table, page.units, tableId(table.id)))}
${section.paired ? html`<div class="paired">${shown}</div>` : shown}
${
  entries.length > 0 &&
  html`<dl class="entries">${entries.map(
    (entry) =>
      html`<dt${entry.id === undefined ? null : html` id="${slug(entry.id)}"`}>${entry.term}</dt><dd>${entry.text}${(entry.code ?? []).map((line) => html`<code class="equation">${line}</code>`)}${(entry.details ?? []).map((detail, i) => html`${i > 0 || (entry.text !== '' && entry.code === undefined) ? html`<br>` : null}<span class="small">${detail}</span>`)}</dd>`,
  )}</dl>`
}
${notes.map((note) => html`<p class="note">${note}</p>`)}`;
  const markup = html`<section aria-labelledby="${id}">${
    head ??
    html`<h2 id="${id}">${section.title}</h2>
<p>${section.lead}</p>`
  }
${section.failure !== undefined && renderFailure(section.failure)}
${section.folded === undefined ? body : html`<details${section.printed === false && html` class="on-screen"`}><summary>${section.folded}</summary>${body}</details>`}</section>`;
  return { markup, failures };
}
