import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderPages } from '../../../src/report/html/pages.ts';
import { examplePages } from '../example-pages.ts';
import { exampleInput } from '../example-review.ts';

const CHROMIUM = '/usr/bin/chromium';
// Without a browser there is nothing to measure with; CI installs it, and fails here without.
const skip = !existsSync(CHROMIUM) && process.env.CI !== 'true';
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// The rules of axe-core for WCAG 2.1 A and AA and its best practices, run on what the browser really shows.
// Twelve pages under a whole rule book on a shared machine: seconds each.
describe.skipIf(skip)('the pages, by the rules of axe-core', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-axe-'));
  const pages = renderPages(examplePages(exampleInput()));
  let browser: Browser;
  beforeAll(async () => {
    for (const page of pages) writeFileSync(join(work, page.file), page.html);
    browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });

  it.each([
    ['light', 1280],
    ['dark', 360],
  ] as const)('break none in the %s theme at %i px', async (colorScheme, width) => {
    // The page's own policy forbids scripts, those of the test too.
    const context = await browser.newContext({ colorScheme, viewport: { width, height: 900 }, bypassCSP: true });
    for (const { file } of pages) {
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(work, file)).href);
      await page.evaluate(AXE);
      const found = (await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'] })",
      )) as { violations: { id: string; nodes: { html: string }[] }[]; passes: unknown[] };
      expect(found.passes.length, file).toBeGreaterThan(10);
      expect(
        found.violations.map((one) => `${one.id}: ${one.nodes[0].html}`),
        file,
      ).toEqual([]);
      await page.close();
    }
    await context.close();
  });
});
