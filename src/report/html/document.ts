import type { Page, Section } from '../page.ts';
import { renderContents } from './document-contents.ts';
import { renderCover, renderSignature } from './document-cover.ts';
import { numbered, numberedParts } from './document-numbers.ts';
import { DOCUMENT_STYLES, documentHead } from './document-styles.ts';
import { type PageLink, placeOf, type RenderedPage, renderFrame, renderMasthead } from './frame.ts';
import { renderKeyNumbers, renderRanges } from './key-numbers.ts';
import { renderMadeBy } from './made-by.ts';
import { html, list, type Markup, raw, slug } from './markup.ts';
import { orFailure, renderFailure, renderSection } from './section.ts';
import { renderSources } from './sources.ts';
import { STYLES } from './styles.ts';

/** What a document is printed with. */
export interface Printing {
  /** sheet on which each heading's id stands, counted from 1, once that is known; without it the contents print no numbers */
  sheetOf?: ReadonlyMap<string, number>;
  paper?: 'letter' | 'a4';
}

/**
 * A page with a cover as one self-contained printable document: cover and contents, numbered chapters, figures and tables, cautions,
 * how it was made, sources, a line to sign. Same page, same bytes.
 */
export function renderDocument(page: Page, links: readonly PageLink[], printing: Printing = {}): RenderedPage {
  const failures: string[] = [];
  if (page.failure !== undefined) failures.push(page.failure);
  const safely = (make: () => Markup) => orFailure(make, (reason) => failures.push(reason));
  const current = (file: string) => file === page.file && raw(' aria-current="page"');
  const parts = numberedParts(page);
  const counts = { figure: 0, table: 0 };
  const numberOf = (id: string) => parts.find((part) => part.id === id)?.number ?? '';
  const drawn = (section: Section) => {
    const head = headOf(section, numberOf(slug(section.id)), section === page.sections[0] ? page : null);
    const { markup: made, failures: broke } = renderSection(numbered(section, counts), page, head);
    failures.push(...broke);
    return section.newSheet === true ? html`<div class="new-sheet">${made}</div>` : made;
  };
  const body = page.sections.filter(({ appendix }) => appendix !== true).map(drawn);
  const appendix = page.sections.filter((section) => section.appendix === true).map(drawn);
  const main = html`${renderCover(page)}
${renderContents(parts, printing.sheetOf)}
${page.failure !== undefined && renderFailure(page.failure)}
${body}
${page.warnings.length > 0 && html`<section aria-labelledby="warnings"><h2 id="warnings">${numberOf('warnings')}Warnings</h2>${list(page.warnings, '')}</section>`}
${page.cautions.length > 0 && html`<section aria-labelledby="cautions"><h2 id="cautions">${numberOf('cautions')}Before you go to a bin</h2><div class="cautions">${list(page.cautions, '')}</div></section>`}
${renderSignature(page, numberOf('signature'))}
${appendix}
${safely(() => retitled(renderMadeBy(page, 'report'), numberOf('made')))}
${safely(() => retitled(renderSources(page.sources), numberOf('sources')))}`;
  const framed = renderFrame({
    page,
    styles: `${STYLES}${DOCUMENT_STYLES}${documentHead(placeOf(page.madeBy), page.title, printing.paper)}`,
    bodyClass: 'document',
    skipTo: 'summary',
    masthead: links.length > 1 && renderMasthead(page, links, current),
    main,
    next: false,
  });
  return { file: page.file, html: framed, failures };
}

/** A section's heading with its number, and its lead; the first chapter carries the page's answer and key numbers. */
function headOf(section: Section, number: string, answering: Page | null): Markup {
  const id = slug(section.id);
  const title = `${number}${section.title}`;
  if (answering === null) {
    return section.within === true
      ? html`<h3 class="part" id="${id}">${title}</h3>
<p>${section.lead}</p>`
      : html`<h2 id="${id}">${title}</h2>
<p>${section.lead}</p>`;
  }
  return html`<h2 id="${id}">${title}</h2>
<p class="answer" id="answer">${answering.answer}</p>
${renderKeyNumbers(answering, 'keys four')}
${renderRanges(answering)}
${section.lead !== '' && html`<p>${section.lead}</p>`}`;
}

/** The number of a closing chapter goes before its title. */
function retitled(markup: Markup, number: string): Markup {
  return raw(markup.text.replace(/(<h2[^>]*>)/, (head) => `${head}${number}`));
}
