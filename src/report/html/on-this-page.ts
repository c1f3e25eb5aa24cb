import type { Section } from '../page.ts';
import { html, type Markup, slug } from './markup.ts';

/** Fewer sections than this are seen at a glance. */
const FEW = 4;
/** More than this stay folded until asked for. */
const MANY = 16;

/** The sections of a long page as links, in columns; folded where there are many, as in a season of fifty bins. */
export function renderOnThisPage(sections: readonly Section[]): Markup | null {
  if (sections.length < FEW) return null;
  const links = html`<ul>${sections.map((one) => html`<li><a href="#${slug(one.id)}">${one.title}</a></li>`)}</ul>`;
  return html`<nav class="here" aria-label="On this page">${
    sections.length > MANY
      ? html`<details><summary>On this page: ${sections.length} sections</summary>${links}</details>`
      : html`<p class="small">On this page</p>${links}`
  }</nav>
`;
}
