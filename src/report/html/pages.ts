import type { Page } from '../page.ts';
import { pagedBins } from './bin-pages.ts';
import { renderDocument } from './document.ts';
import type { RenderedPage } from './frame.ts';
import { renderPage } from './page.ts';

/**
 * All pages of a review, linked to each other in the given order; where a page has very many bins, pages of some bins each follow it.
 * `failures` of each tells what did not work.
 */
export function renderPages(pages: readonly Page[]): RenderedPage[] {
  const links = pages.map(({ file, title }) => ({ file, title }));
  return pages.flatMap((page) => {
    if (page.cover !== undefined) return [renderDocument(page, links)];
    const paged = pagedBins(page);
    return [paged.main, ...paged.parts].map((one) => renderPage(one, links, paged));
  });
}
