import type { Page } from '../page.ts';
import { type PagedBins, renderBinIndex, renderBinNav } from './bin-pages.ts';
import { cssString, type PageLink, placeOf, type RenderedPage, renderFrame, renderMasthead } from './frame.ts';
import { renderKeyNumbers, renderRanges } from './key-numbers.ts';
import { renderMadeBy } from './made-by.ts';
import { html, list, type Markup, raw } from './markup.ts';
import { renderOnThisPage } from './on-this-page.ts';
import { orFailure, renderFailure, renderSection } from './section.ts';
import { renderSources } from './sources.ts';
import { STYLES } from './styles.ts';

/**
 * One self-contained HTML file. Same page, same bytes. What fails inside keeps its heading and says so.
 *
 * @param paged  the pages that it is one of, where its bins stand on several
 */
export function renderPage(page: Page, links: readonly PageLink[], paged?: PagedBins): RenderedPage {
  const failures: string[] = [];
  if (page.failure !== undefined) failures.push(page.failure);
  const body = page.sections.map((section) => {
    const beside = links.some(({ file }) => file === section.see?.file);
    const drawn = renderSection(beside ? section : { ...section, see: undefined }, page);
    failures.push(...drawn.failures);
    return drawn.markup;
  });
  const safely = (make: () => Markup) => orFailure(make, (reason) => failures.push(reason));
  const { madeBy, units, keyNumbers } = page;
  const titled = `${placeOf(madeBy)}. ${page.title}.`;
  const current = (file: string) =>
    file === page.file ? raw(' aria-current="page"') : file === paged?.main.file && raw(' aria-current="true"');
  const main = html`<div class="print-head"><p>${titled} ${units.date(madeBy.generatedAtMs)}.</p></div>
${paged !== undefined && renderBinNav(paged, page.file)}<h1>${page.title}</h1>
<p class="question">${page.question}</p>
<p class="answer" id="answer">${page.answer}</p>
${page.failure !== undefined && renderFailure(page.failure)}
${
  keyNumbers.length > 0 &&
  safely(
    () => html`${renderKeyNumbers(page, keyNumbers.length === 4 ? 'keys four' : 'keys')}
`,
  )
}
${renderRanges(page)}
${renderOnThisPage(page.sections)}${body}
${paged !== undefined && page.file === paged.main.file && renderBinIndex(paged)}<section aria-labelledby="warnings"><h2 id="warnings">Warnings</h2>${list(page.warnings, 'None.')}</section>
${page.cautions.length > 0 && html`<section aria-labelledby="cautions" class="cautions"><h2 id="cautions">Before you go to a bin</h2>${list(page.cautions, '')}</section>`}
${safely(() => renderMadeBy(page))}
${safely(() => renderSources(page.sources))}`;
  const framed = renderFrame({
    page,
    styles: `${STYLES}${runningHead(titled)}`,
    skipTo: 'answer',
    masthead: renderMasthead(page, links, current),
    main,
    next: nextPage(page, links, paged),
  });
  return { file: page.file, html: framed, failures };
}

/** After the last section: the next page of some bins, else the next in the row. */
function nextPage(page: Page, links: readonly PageLink[], paged?: PagedBins): Markup | false {
  const row = paged === undefined ? [] : [paged.main, ...paged.parts];
  const main = paged?.main.file ?? page.file;
  const next =
    row[row.findIndex(({ file }) => file === page.file) + 1] ?? links[links.findIndex(({ file }) => file === main) + 1];
  if (next === undefined || next.file === page.file) return false;
  return html`<nav aria-label="Next page"><p>Next: <a href="${next.file}">${next.title}</a></p></nav>`;
}

/** Head and page number of every printed page but the first, which has its own. */
function runningHead(text: string): string {
  return `@media print{@page{@top-left{content:${cssString(text)};font-size:8pt}@bottom-right{content:counter(page) " / " counter(pages);font-size:8pt}}@page :first{@top-left{content:none}}}`;
}
