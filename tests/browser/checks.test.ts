import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NO_BROWSER, testBrowser } from '../support/browser.ts';
import { onPaper } from '../support/on-paper.ts';
import { brokenRules, cutWords, troublesOf } from '../support/page-checks.ts';

/** 700 px are left on the first sheet's text, then a figure, a table of a tall row and one of many rows. */
const BAD = `<!doctype html><html lang="en"><head><title>Bad</title><style>
@page{margin:18mm 15mm}body{margin:0;font:16px/20px sans-serif}figure{margin:0}
.wide{width:2000px}@media print{.wide{width:auto}}thead{display:table-row-group}
</style></head><body><main><h1>Bad</h1><div style="height:700px"></div>
<figure id="torn"><figcaption>Caption</figcaption><div style="height:500px">A figure.</div></figure>
<table id="tall"><thead><tr><th>Head</th></tr></thead><tbody><tr><td>${'line<br>'.repeat(60)}</td></tr></tbody></table>
<table id="long"><thead><tr><th>Lost head</th></tr></thead><tbody>${'<tr><td>row</td></tr>'.repeat(80)}</tbody></table>
<svg id="s" width="400" height="20"><text x="-9" y="15">Cut</text><text x="90" y="15">Whole</text></svg>
<p class="wide" style="color:#ddd">Pale.</p><img src="http://192.0.2.1/a.png">
<script>console.log('said'); nowhere();</script></main></body></html>`;

// The checks of the other files, on a page on which they must find something.
describe.skipIf(NO_BROWSER)('the checks of a page', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-checks-'));
  const path = join(work, 'bad.html');
  let browser: Browser;
  beforeAll(async () => {
    writeFileSync(path, BAD);
    browser = await testBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });

  it('find what is cut on paper, and heads that are not repeated', async () => {
    const tab = await browser.newPage();
    await tab.emulateMedia({ media: 'print' });
    await tab.goto(pathToFileURL(path).href);
    const { cut, goOn, headless, figures, rows } = await onPaper(tab, 'Letter');
    await tab.close();
    expect(cut).toEqual([expect.stringContaining('figure torn'), expect.stringContaining('row tall 1')]);
    expect(goOn).toEqual(['tall', 'long']);
    expect(headless.some((told) => told.startsWith('long, sheet') && told.endsWith('Lost head'))).toBe(true);
    expect([figures, rows]).toEqual([1, 81]);
  });

  it('find words that the edge cuts off', async () => {
    const tab = await browser.newPage({ viewport: { width: 2100, height: 900 } });
    await tab.goto(pathToFileURL(path).href);
    expect(await cutWords(tab)).toEqual(['undefined: Cut']);
    await tab.close();
  });

  it('find script errors, words on the console, requests, and what is too wide', async () => {
    const told = (await troublesOf(browser, [path], 1280)).join('\n');
    for (const found of [/error: nowhere is not defined/, /console: said/, /request: http:\/\/192/, /px too wide/])
      expect(told).toMatch(found);
  });

  it('find broken rules', async () => {
    const told = (await brokenRules(browser, [path], { width: 1280, colorScheme: 'light' })).join('\n');
    expect(told).toMatch(/serious: color-contrast/);
    expect(told).toMatch(/critical: image-alt/);
  });
});
