import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderPages } from '../../../src/report/html/pages.ts';
import { NO_BROWSER, testBrowser } from '../../support/browser.ts';
import { brokenRules, WINDOWS } from '../../support/page-checks.ts';
import { examplePages } from '../example-pages.ts';
import { exampleInput } from '../example-review.ts';

// Pages with bins that broke and bins of which nothing is known; tests/browser has those of whole seasons.
describe.skipIf(NO_BROWSER)('the pages, by the rules of axe-core', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-axe-'));
  // The methods are those of any season.
  const pages = renderPages(examplePages(exampleInput())).filter(({ file }) => file !== 'methods.html');
  let browser: Browser;
  beforeAll(async () => {
    for (const page of pages) writeFileSync(join(work, page.file), page.html);
    browser = await testBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });

  it.each(WINDOWS)('break none in the $colorScheme theme at $width px', async (window) => {
    const paths = pages.map(({ file }) => join(work, file));
    expect(await brokenRules(browser, paths, window)).toEqual([]);
  });
});
