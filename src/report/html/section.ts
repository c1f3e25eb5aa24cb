import { errorText } from '../../base/error-text.ts';
import { partsOf } from '../figures/in-parts.ts';
import type { Entry, Figure, FlowItem, Page, Section, Table } from '../page.ts';
import { renderFigure } from './figure.ts';
import { html, type Markup, slug } from './markup.ts';
import { renderTable } from './table.ts';

export function renderFailure(reason: string, stands = 'The other parts of the page stand.'): Markup {
  return html`<p class="failure" role="note"><strong>This part failed.</strong> ${reason} ${stands}</p>`;
}

/** What is made, or in its place that it failed. */
export function orFailure(make: () => Markup, failed: (reason: string) => void): Markup {
  try {
    return make();
  } catch (error) {
    failed(errorText(error));
    return renderFailure(errorText(error));
  }
}

/**
 * A section as HTML, and what failed in it; a figure that cannot be drawn leaves the rest of the section.
 *
 * @param head  in place of its heading and lead
 */
export function renderSection(section: Section, page: Page, head?: Markup): { markup: Markup; failures: string[] } {
  const id = slug(section.id);
  const failures: string[] = [];
  const safely = (make: () => Markup) => orFailure(make, (reason) => failures.push(`${section.title}: ${reason}`));
  if (section.failure !== undefined) failures.push(`${section.title}: ${section.failure}`);
  const { table, figures = [], tables = [], entries = [], notes = [] } = section;
  const drawn = (figure: Figure) =>
    html`${partsOf(figure).map((part) => safely(() => renderFigure(part, `${id}-${slug(part.id)}`)))}`;
  const ruled = (one: Table) => safely(() => renderTable(one, page.units, `${id}-${slug(one.id)}`));
  const item = (piece: FlowItem): Markup => {
    if ('text' in piece) return html`<p>${piece.text}</p>`;
    if ('note' in piece) return html`<p class="note">${piece.note}</p>`;
    if ('failure' in piece) {
      failures.push(`${section.title}: ${piece.failure}`);
      return renderFailure(piece.failure, 'What was written before it stands; what comes after it is missing.');
    }
    if ('figure' in piece) return html`${figures.filter(({ id }) => id === piece.figure).map(drawn)}`;
    return html`${tables.filter(({ id }) => id === piece.table).map(ruled)}`;
  };
  const inOrder = (): Markup => {
    const shown = html`${figures.map(drawn)}
${tables.map(ruled)}`;
    return html`${table !== undefined && ruled(table)}
${section.paired ? html`<div class="paired">${shown}</div>` : shown}
${
  entries.length > 0 &&
  html`<dl class="entries">${entries.map(
    (entry) =>
      html`<dt${entry.id === undefined ? null : html` id="${slug(entry.id)}"`}${onScreen(entry)}>${entry.term}</dt><dd${onScreen(entry)}>${entry.text}${(entry.code ?? []).map((line) => html`<code class="equation">${line}</code>`)}${(entry.details ?? []).map((detail, i) => html`${i > 0 || (entry.text !== '' && entry.code === undefined) ? html`<br>` : null}<span class="small">${detail}</span>`)}</dd>`,
  )}</dl>`
}
${notes.map((note) => html`<p class="note">${note}</p>`)}`;
  };
  const body = section.flow === undefined ? inOrder() : html`${section.flow.map(item)}`;
  const markup = html`<section aria-labelledby="${id}">${
    head ??
    html`<h2 id="${id}">${section.title}</h2>
${section.lead !== '' && html`<p>${section.lead}</p>`}`
  }
${
  section.see !== undefined &&
  html`<p><a href="${section.see.file}">${section.see.title}</a></p>
`
}${section.failure !== undefined && renderFailure(section.failure)}
${section.folded === undefined ? body : html`<details${section.printed === false && html` class="on-screen"`}><summary>${section.folded}</summary>${body}</details>`}</section>`;
  return { markup, failures };
}

const onScreen = ({ printed }: Entry) => (printed === false ? html` class="on-screen"` : null);
