import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { makeSeasonFolder } from '../support/season-folder.ts';

const CHROMIUM = '/usr/bin/chromium';
// Without a browser there is nothing to open the pages with; CI installs it, and fails here without.
const skip = !existsSync(CHROMIUM) && process.env.CI !== 'true';

describe.skipIf(skip)('pages in a browser, from the file system', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-browser-'));
  const out = join(work, 'out');
  let browser: Browser;

  beforeAll(async () => {
    const season = join(work, 'season');
    makeSeasonFolder(season);
    await runReview({ seasonFolder: season, out, generatedAtMs: Date.UTC(2025, 0, 1), onStage: () => {} });
    browser = await chromium.launch({
      executablePath: CHROMIUM,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });

  it.each([360, 1280])('open without script error, outside request or sideways scrolling at %i px', async (width) => {
    const page = await browser.newPage({ viewport: { width, height: 900 } });
    const troubles: string[] = [];
    page.on('pageerror', (error) => troubles.push(`error: ${error.message}`));
    page.on('console', (message) => message.type() === 'error' && troubles.push(`console: ${message.text()}`));
    page.on('request', (request) => request.url().startsWith('file://') || troubles.push(`request: ${request.url()}`));
    const names = readdirSync(out).filter((name) => name.endsWith('.html'));
    expect(names.length).toBeGreaterThanOrEqual(6);
    for (const name of names) {
      await page.goto(pathToFileURL(join(out, name)).href);
      const [scroll, client] = await page.evaluate(() => [
        document.documentElement.scrollWidth,
        document.documentElement.clientWidth,
      ]);
      if (scroll > client) troubles.push(`${name}: ${scroll} px wide in ${client} px`);
    }
    expect(troubles).toEqual([]);
    await page.close();
  });
});
