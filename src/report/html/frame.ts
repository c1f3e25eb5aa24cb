import type { MadeBy, Page } from '../page.ts';
import { html, type Markup, raw } from './markup.ts';
import { READ_OUT, READ_OUT_HASH } from './read-out.ts';

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

/** What stands within the frame that every file of a review has. */
export interface Framed {
  page: Page;
  styles: string;
  /** `document` where it is one; left out: a page */
  bodyClass?: string;
  /** what the first link, for those who listen, leads to */
  skipTo: string;
  masthead: Markup | false;
  main: Markup;
  /** before the last line */
  next: Markup | false;
}

/** Nothing is loaded from anywhere: no font, no picture but those inside the file, and no script but the page's own. */
const POLICY = `default-src 'none'; script-src '${READ_OUT_HASH}'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'`;

/** What every page ends with; on paper it stands at the foot of each sheet. */
export const LAST_LINE =
  'Figures are estimates, to be confirmed by probe and moisture meter. Local codes and licensed practice come first.';

/** One self-contained file. */
export function renderFrame({ page, styles, bodyClass, skipTo, masthead, main, next }: Framed): string {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${raw(POLICY)}">
<meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="generator" content="fanbook ${page.madeBy.version}">
<title>${page.title}: ${placeOf(page.madeBy)}</title>
<style>${raw(styles)}</style>
</head>
<body${bodyClass !== undefined && html` class="${bodyClass}"`}>
<a class="skip" href="#answer">Skip to the ${skipTo}</a>
${masthead}
<main class="frame" id="main">
${main}
</main>
<footer><div class="frame">${next}<p>${LAST_LINE}</p></div></footer>
${READ_OUT}
</body>
</html>
`.text;
}

/** Farm and season. */
export function placeOf({ farm, seasonTitle }: MadeBy): string {
  return [farm, seasonTitle].filter((part) => part !== null && part !== '').join(', ');
}

/** The row of pages over a page. @param current  what a link says of being the page itself */
export function renderMasthead(
  { madeBy }: Page,
  links: readonly PageLink[],
  current: (file: string) => Markup | false,
): Markup {
  return html`<header class="masthead"><div class="frame"><p>${placeOf(madeBy)}</p>
<nav aria-label="Pages"><ul>${links.map((link) => html`<li><a href="${link.file}"${current(link.file)}>${link.title}</a></li>`)}</ul></nav></div></header>`;
}

/** A text within a style sheet; all signs but letters, digits and blanks go in as code points. */
export function cssString(text: string): string {
  return `"${text.replace(/[^A-Za-z0-9 ]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 32).toString(16)} `)}"`;
}
