import { DASH } from '../number-text.ts';
import type { KeyNumber, Page } from '../page.ts';
import { reasonOf } from '../section.ts';
import type { Units } from '../units.ts';
import { type PagedBins, renderBinIndex, renderBinNav } from './bin-pages.ts';
import { renderMadeBy } from './made-by.ts';
import { html, type Markup, raw } from './markup.ts';
import { renderOnThisPage } from './on-this-page.ts';
import { READ_OUT, READ_OUT_HASH } from './read-out.ts';
import { renderFailure, renderSection } from './section.ts';
import { renderSources } from './sources.ts';
import { STYLES } from './styles.ts';

export const USUAL_RANGES =
  'Ranges are 90 % intervals: nine times in ten the true value lies inside. Where none stands, the number was counted, or both ends round to it.';

/** A page's place in the row of pages. */
export interface PageLink {
  file: string;
  title: string;
}

export interface RenderedPage {
  file: string;
  html: string;
  /** what failed on it, a line each; empty when nothing did */
  failures: string[];
}

/** Nothing is loaded from anywhere: no font, no picture but those inside the file, and no script but the page's own. */
export const POLICY = `default-src 'none'; script-src '${READ_OUT_HASH}'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'`;

export function keyNumber(key: KeyNumber, units: Units): Markup {
  const amount = key.amount;
  const value = amount === null || typeof amount === 'number' ? amount : amount.value;
  const why = amount !== null && typeof amount === 'object' ? amount.why : null;
  const interval = amount !== null && typeof amount === 'object' ? units.interval(key.quantity, amount) : '';
  const note = [key.note, value === null ? (why ?? (key.note === undefined ? 'Not known.' : null)) : null];
  return html`<div><dt>${key.label}</dt><dd><span class="big">${value === null ? DASH : units.number(key.quantity, value)}</span> <span class="unit">${value === null ? '' : [units.unit(key.quantity), key.known].filter(Boolean).join(', ')}</span>${interval && html`<br><span class="small">${interval}</span>`}${note.map((text) => (text ? html`<br><span class="small">${text}</span>` : null))}</dd></div>`;
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

/** Head and page number of every printed page but the first, which has its own. All signs but letters and digits go in as code points. */
function runningHead(text: string): string {
  const safe = text.replace(/[^A-Za-z0-9 ]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 32).toString(16)} `);
  return `@media print{@page{@top-left{content:"${safe}";font-size:8pt}@bottom-right{content:counter(page) " / " counter(pages);font-size:8pt}}@page :first{@top-left{content:none}}}`;
}

export function hasInterval({ amount }: KeyNumber): boolean {
  return amount !== null && typeof amount === 'object' && amount.interval !== null;
}

export function list(items: readonly string[], none: string): Markup {
  if (items.length === 0) return html`<p>${none}</p>`;
  return html`<ul>${items.map((item) => html`<li>${item}</li>`)}</ul>`;
}

/**
 * One self-contained HTML file. Same page, same bytes. What fails inside keeps its heading and says so.
 *
 * @param paged  the pages that it is one of, where its bins stand on several
 */
export function renderPage(page: Page, links: readonly PageLink[], paged?: PagedBins): RenderedPage {
  const failures: string[] = [];
  if (page.failure !== undefined) failures.push(page.failure);
  const body = page.sections.map((section) => {
    const drawn = renderSection(section, page);
    failures.push(...drawn.failures);
    return drawn.markup;
  });
  const safely = (make: () => Markup): Markup => {
    try {
      return make();
    } catch (error) {
      failures.push(reasonOf(error));
      return renderFailure(reasonOf(error));
    }
  };
  const { madeBy, units } = page;
  const place = [madeBy.farm, madeBy.seasonTitle]
    .filter((part): part is string => part !== null && part !== '')
    .join(', ');
  const current = (file: string) =>
    file === page.file ? raw(' aria-current="page"') : file === paged?.main.file && raw(' aria-current="true"');
  const markup = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${raw(POLICY)}">
<meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="generator" content="fanbook ${madeBy.version}">
<title>${page.title}: ${place}</title>
<style>${raw(STYLES)}${raw(runningHead(`${place}. ${page.title}.`))}</style>
</head>
<body>
<a class="skip" href="#answer">Skip to the answer</a>
<header class="masthead"><div class="frame"><p>${place}</p>
<nav aria-label="Pages"><ul>${links.map((link) => html`<li><a href="${link.file}"${current(link.file)}>${link.title}</a></li>`)}</ul></nav></div></header>
<main class="frame" id="main">
<div class="print-head"><p>${place}. ${page.title}. ${units.date(madeBy.generatedAtMs)}.</p></div>
${paged !== undefined && renderBinNav(paged, page.file)}<h1>${page.title}</h1>
<p class="question">${page.question}</p>
<p class="answer" id="answer">${page.answer}</p>
${page.failure !== undefined && renderFailure(page.failure)}
${
  page.keyNumbers.length > 0 &&
  safely(
    () => html`<dl class="${page.keyNumbers.length === 4 ? 'keys four' : 'keys'}">${page.keyNumbers.map((key) => keyNumber(key, units))}</dl>
`,
  )
}
${page.keyNumbers.some(hasInterval) && html`<p class="small">${page.ranges ?? USUAL_RANGES}</p>`}
${renderOnThisPage(page.sections)}${body}
${paged !== undefined && page.file === paged.main.file && renderBinIndex(paged)}<section aria-labelledby="warnings"><h2 id="warnings">Warnings</h2>${list(page.warnings, 'None.')}</section>
${page.cautions.length > 0 && html`<section aria-labelledby="cautions" class="cautions"><h2 id="cautions">Before you go to a bin</h2>${list(page.cautions, '')}</section>`}
${safely(() => renderMadeBy(page))}
${safely(() => renderSources(page.sources))}
</main>
<footer><div class="frame">${nextPage(page, links, paged)}<p>Figures are estimates, to be confirmed by probe and moisture meter. Local codes and licensed practice come first.</p></div></footer>
${READ_OUT}
</body>
</html>
`;
  return { file: page.file, html: markup.text, failures };
}
