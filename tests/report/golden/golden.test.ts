import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { renderFigure } from '../../../src/report/html/figure.ts';
import { renderPages } from '../../../src/report/html/pages.ts';
import { GOLDEN_FIGURES } from './golden-figures.ts';
import { GOLDEN, heldAgainst, normalised, WAYS } from './golden-file.ts';
import { PAGE_OF_EVERY_PART } from './page-of-every-part.ts';

describe('golden figures and page', () => {
  const warn = vi.spyOn(console, 'warn');
  beforeAll(() => warn.mockClear());
  // Any warning of the plotting library is a failure, whoever caught it.
  afterAll(() => {
    expect(warn).not.toHaveBeenCalled();
    warn.mockRestore();
  });
  it.each(GOLDEN_FIGURES.map((figure) => [figure.id, figure] as const))('%s, wide and narrow', (id, figure) => {
    const drawn = normalised(renderFigure(figure, id).text);
    expect(heldAgainst(join(GOLDEN, 'figures', `${id}.html`), `${drawn}\n`, WAYS)).toBeNull();
  });
  it('a page', () => {
    const [page] = renderPages([PAGE_OF_EVERY_PART]);
    expect(page.failures).toEqual([]);
    expect(heldAgainst(join(GOLDEN, 'pages', 'of-every-part.html'), normalised(page.html), WAYS)).toBeNull();
  });
});
