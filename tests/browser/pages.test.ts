import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const CHROMIUM = '/usr/bin/chromium';
// Without a browser there is nothing to open the pages with; CI installs it, and fails here without.
const skip = !existsSync(CHROMIUM) && process.env.CI !== 'true';

describe.skipIf(skip)('pages in a browser, from the file system', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-browser-'));
  const out = join(work, 'out');
  let browser: Browser;

  beforeAll(async () => {
    const season = join(work, 'season');
    // Two bins: the tables of all bins have a row a bin.
    makeSeasonFolder(season, { ...SMALL_SEASON, bins: 2 });
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

  it('show at 360 px that a table goes on sideways, and let the keyboard scroll it', async () => {
    const page = await browser.newPage({ viewport: { width: 360, height: 900 } });
    const found: string[] = [];
    let wide = 0;
    for (const name of readdirSync(out).filter((file) => file.endsWith('.html'))) {
      await page.goto(pathToFileURL(join(out, name)).href);
      for (const frame of await page.locator('.scroll').all()) {
        if (!(await frame.isVisible())) continue;
        const is = await frame.evaluate((element) => ({
          over: element.scrollWidth - element.clientWidth,
          label: element.getAttribute('aria-label') ?? '',
          tab: (element as HTMLElement).tabIndex,
          shade: getComputedStyle(element).backgroundImage,
          moves: getComputedStyle(element).backgroundAttachment,
          note: element.previousElementSibling?.className.includes('sideways')
            ? getComputedStyle(element.previousElementSibling).display
            : 'none',
          columns: element.querySelectorAll('thead tr:first-child th').length,
        }));
        if (is.over <= 0) continue;
        wide += 1;
        const at = `${name}: ${is.label}`;
        if (is.label === '' || is.tab !== 0) found.push(`${at}: no label, or not to be reached by keyboard`);
        // Two covers that move with the table and two shades that stay: the shade shows where there is more.
        if (is.shade.split('gradient(').length !== 5 || is.moves !== 'local, local, scroll, scroll')
          found.push(`${at}: no shade at the edge`);
        if (is.columns >= 6 && is.note === 'none') found.push(`${at}: does not say that it goes on`);
      }
    }
    expect(found).toEqual([]);
    expect(wide).toBeGreaterThan(3);
    await page.goto(pathToFileURL(join(out, 'index.html')).href);
    const first = page.locator('.scroll').first();
    await first.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
    await page.waitForFunction('document.querySelector(".scroll").scrollLeft > 0');
    // The name of the row stays in sight while its numbers move.
    const left = await first
      .locator('tbody th')
      .first()
      .evaluate((cell) => cell.getBoundingClientRect().left);
    expect(left).toBeGreaterThanOrEqual(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    expect(await page.locator('.sideways').first().isVisible()).toBe(false);
    await page.close();
  });

  // At 96 px an inch, less the margins of 15 mm at the sides and 18 mm above and below: what a sheet leaves.
  it.each([
    ['Letter', 8.5 * 25.4, 11 * 25.4],
    ['A4', 210, 297],
  ])('print on %s without a cut table or figure, on white whatever the theme', async (_name, widthMm, heightMm) => {
    const px = (mm: number) => Math.round((mm / 25.4) * 96);
    const sheet = { width: px(widthMm - 30), height: px(heightMm - 36) };
    const page = await browser.newPage({ viewport: sheet, colorScheme: 'dark' });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const cut: string[] = [];
    let figures = 0;
    for (const name of readdirSync(out).filter((file) => file.endsWith('.html'))) {
      await page.goto(pathToFileURL(join(out, name)).href);
      const found = await page.evaluate((most) => {
        const all = [...document.querySelectorAll('table,figure')].map((one) => ({
          id: one.id,
          figure: one.tagName === 'FIGURE',
          box: one.getBoundingClientRect(),
        }));
        const shown = all.filter(({ box }) => box.width > 0);
        return {
          figures: shown.filter((one) => one.figure).length,
          cut: shown
            .filter(({ box, figure }) => box.right > most.width + 1 || (figure && box.height > most.height))
            .map((one) => one.id),
          paper: getComputedStyle(document.documentElement).backgroundColor,
          ink: getComputedStyle(document.documentElement).color,
        };
      }, sheet);
      figures += found.figures;
      cut.push(...found.cut.map((id) => `${name}: ${id}`));
      expect([found.paper, found.ink], name).toEqual(['rgb(255, 255, 255)', 'rgb(29, 31, 32)']);
    }
    expect(cut).toEqual([]);
    expect(figures).toBeGreaterThan(10);
    await page.close();
  });

  it('print the methods on 15 sheets or fewer: what the season did not use stays on the page', async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(out, 'methods.html')).href);
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    const sheets = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(sheets).toBeGreaterThan(4);
    expect(sheets).toBeLessThanOrEqual(15);
    await page.close();
  });
});
