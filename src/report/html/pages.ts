import type { Page } from '../page.ts';
import { renderDocument } from './document.ts';
import { type RenderedPage, renderPage } from './page.ts';

/** All pages of a review, linked to each other in the given order. `failures` of each tells what did not work. */
export function renderPages(pages: readonly Page[]): RenderedPage[] {
  const links = pages.map(({ file, title }) => ({ file, title }));
  return pages.map((page) => (page.cover === undefined ? renderPage(page, links) : renderDocument(page, links)));
}
