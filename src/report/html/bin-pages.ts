import type { Page, Section } from '../page.ts';
import { html, type Markup, slug } from './markup.ts';

/** Sections of a single bin have ids that begin so. */
const OF_BIN = /^bin-/;
/** Up to so many bins a page shows whole; of more the single bins follow on pages of their own. */
const BINS_ON_ONE = 12;
const BINS_A_PAGE = 10;

/** A page of many bins: what is said of all of them, and pages of some bins each. */
export interface PagedBins {
  main: Page;
  parts: readonly Page[];
}

/** Fifty bins in one page would be slow to open and long to look through: the single ones are put on pages of ten, listed on the first. */
export function pagedBins(page: Page): PagedBins {
  const single = page.sections.filter(({ id }) => OF_BIN.test(id));
  if (single.length <= BINS_ON_ONE) return { main: page, parts: [] };
  const count = Math.ceil(single.length / BINS_A_PAGE);
  const each = Math.ceil(single.length / count);
  const parts = Array.from({ length: count }, (_, i): Page => {
    const sections = single.slice(i * each, (i + 1) * each);
    const id = `${page.id}-bins-${i + 1}`;
    const title = `${page.title}: ${namesOf(sections)}`;
    return { ...page, id, file: `${id}.html`, title, keyNumbers: [], sections };
  });
  return { main: { ...page, sections: page.sections.filter(({ id }) => !OF_BIN.test(id)) }, parts };
}

function namesOf(sections: readonly Section[]): string {
  const names = [...new Set([sections[0].title, sections[sections.length - 1].title])];
  return names.join(' to ');
}

/** On the first page: every bin by name, on which page it stands. */
export function renderBinIndex({ parts }: PagedBins): Markup | null {
  if (parts.length === 0) return null;
  const bins = parts.flatMap(({ file, sections }) =>
    sections.map(({ id, title }) => html`<li><a href="${file}#${slug(id)}">${title}</a></li>`),
  );
  return html`<section aria-labelledby="each-bin"><h2 id="each-bin">Each bin</h2>
<p>${bins.length} bins, each with its own figures and tables, on ${parts.length} further pages.</p>
<ul class="columns">${bins}</ul></section>
`;
}

/** On a page of some bins: the way back to all of them, and on to the others. */
export function renderBinNav({ main, parts }: PagedBins, current: string): Markup | null {
  if (current === main.file) return null;
  const part = ({ file, sections }: Page) =>
    file === current
      ? html`<li><a href="${file}" aria-current="page">${namesOf(sections)}</a></li>`
      : html`<li><a href="${file}">${namesOf(sections)}</a></li>`;
  return html`<nav class="here" aria-label="Bins"><ul><li><a href="${main.file}">All bins</a></li>${parts.map(part)}</ul></nav>
`;
}
