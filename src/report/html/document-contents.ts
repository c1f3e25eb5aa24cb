import type { Part } from './document-numbers.ts';
import { html, type Markup } from './markup.ts';

/** From so many lines on the contents stand in columns. */
const COLUMNS_FROM = 24;

/** The contents: on screen as links, on paper with the sheet of each heading once that is known. */
export function renderContents(parts: readonly Part[], sheetOf?: ReadonlyMap<string, number>): Markup {
  const line = ({ id, number, title, level }: Part) =>
    html`<li class="${level === 1 ? 'chapter' : 'part'}"><a href="#${id}"><span class="title">${number}${title}</span>${sheetOf !== undefined && html`<span class="sheet">${sheetOf.get(id) ?? '00'}</span>`}</a></li>`;
  return html`<nav class="${['contents', parts.length >= COLUMNS_FROM && 'long', sheetOf !== undefined && 'numbered'].filter(Boolean).join(' ')}" aria-labelledby="contents"><h2 id="contents">Contents</h2>
<ol>${parts.map(line)}</ol></nav>`;
}
