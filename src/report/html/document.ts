import type { Page, Section } from '../page.ts';
import { reasonOf } from '../section.ts';
import { renderContents } from './document-contents.ts';
import { renderCover, renderSignature } from './document-cover.ts';
import { numbered, numberedParts } from './document-numbers.ts';
import { DOCUMENT_STYLES, documentHead } from './document-styles.ts';
import { renderMadeBy } from './made-by.ts';
import { html, type Markup, raw, slug } from './markup.ts';
import { hasInterval, keyNumber, list, type PageLink, POLICY, type RenderedPage, USUAL_RANGES } from './page.ts';
import { READ_OUT } from './read-out.ts';
import { renderFailure, renderSection } from './section.ts';
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
  const safely = (make: () => Markup): Markup => {
    try {
      return make();
    } catch (error) {
      failures.push(reasonOf(error));
      return renderFailure(reasonOf(error));
    }
  };
  const { madeBy } = page;
  const place = [madeBy.farm, madeBy.seasonTitle].filter((part) => part !== null && part !== '').join(', ');
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
  const markup = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${raw(POLICY)}">
<meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="generator" content="fanbook ${madeBy.version}">
<title>${page.title}: ${place}</title>
<style>${raw(STYLES)}${raw(DOCUMENT_STYLES)}${raw(documentHead(place, page.title, printing.paper))}</style>
</head>
<body class="document">
<a class="skip" href="#answer">Skip to the summary</a>
${
  links.length > 1 &&
  html`<header class="masthead"><div class="frame"><p>${place}</p>
<nav aria-label="Pages"><ul>${links.map((link) => html`<li><a href="${link.file}"${link.file === page.file ? raw(' aria-current="page"') : null}>${link.title}</a></li>`)}</ul></nav></div></header>`
}
<main class="frame" id="main">
${renderCover(page)}
${renderContents(parts, printing.sheetOf)}
${page.failure !== undefined && renderFailure(page.failure)}
${body}
${page.warnings.length > 0 && html`<section aria-labelledby="warnings"><h2 id="warnings">${numberOf('warnings')}Warnings</h2>${list(page.warnings, '')}</section>`}
${page.cautions.length > 0 && html`<section aria-labelledby="cautions"><h2 id="cautions">${numberOf('cautions')}Before you go to a bin</h2><div class="cautions">${list(page.cautions, '')}</div></section>`}
${renderSignature(page, numberOf('signature'))}
${appendix}
${safely(() => retitled(renderMadeBy(page, 'report'), numberOf('made')))}
${safely(() => retitled(renderSources(page.sources), numberOf('sources')))}
</main>
<footer><div class="frame"><p>Figures are estimates, to be confirmed by probe and moisture meter. Local codes and licensed practice come first.</p></div></footer>
${READ_OUT}
</body>
</html>
`;
  return { file: page.file, html: markup.text, failures };
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
  const { keyNumbers, units, answer, ranges } = answering;
  return html`<h2 id="${id}">${title}</h2>
<p class="answer" id="answer">${answer}</p>
${keyNumbers.length > 0 && html`<dl class="keys four">${keyNumbers.map((key) => keyNumber(key, units))}</dl>`}
${keyNumbers.some(hasInterval) && html`<p class="small">${ranges ?? USUAL_RANGES}</p>`}
${section.lead !== '' && html`<p>${section.lead}</p>`}`;
}

/** The number of a closing chapter goes before its title. */
function retitled(markup: Markup, number: string): Markup {
  return raw(markup.text.replace(/(<h2[^>]*>)/, (head) => `${head}${number}`));
}
