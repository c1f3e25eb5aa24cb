import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import byFrame from '../notebooks/user/by-frame.ts';
import byVerbs from '../notebooks/user/by-verbs.ts';
import { makeBareSeason } from '../support/bare-season.ts';
import { NO_BROWSER, testBrowser } from '../support/browser.ts';
import { onPaper } from '../support/on-paper.ts';
import { brokenRules, cutWords, troublesOf, WINDOWS } from '../support/page-checks.ts';
import { seasonPages } from '../support/season-pages.ts';

// What a margin of 15 mm at the sides and 18 mm above and below leaves of a sheet, at 96 px an inch.
const PAPERS = [
  ['Letter', 8.5 * 25.4, 11 * 25.4],
  ['A4', 210, 297],
] as const;
const px = (mm: number) => Math.round((mm / 25.4) * 96);

describe.skipIf(NO_BROWSER)('pages in a browser, from the file system', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-browser-'));
  const bare = join(work, 'bare');
  let browser: Browser;
  let paths: string[] = [];

  beforeAll(async () => {
    const { kit, clients, firstLook, manyBins, input } = await seasonPages();
    const own = [firstLook, await byVerbs.page(input), await byFrame.page(input)];
    const rendered = [
      ...renderPages(kit),
      ...renderPages([manyBins]).map((page) => ({ ...page, file: `many-${page.file}` })),
      ...own.flatMap((page) => renderPages([page])),
      ...renderPages([clients]).map((page) => ({ ...page, file: 'clients.html' })),
    ];
    for (const { file, html, failures } of rendered) {
      expect(failures, file).toEqual([]);
      writeFileSync(join(work, file), html);
    }
    const season = join(work, 'season');
    makeBareSeason(season);
    const job = { seasonFolder: season, out: bare, generatedAtMs: Date.UTC(2025, 0, 1), onStage: () => {} };
    expect((await runReview(job)).failures).toEqual([]);
    paths = [work, bare].flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.endsWith('.html'))
        .map((name) => join(folder, name)),
    );
    expect(paths.length).toBeGreaterThan(20);
    browser = await testBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });

  it.each([360, 1280])('open without script error, outside request or sideways scrolling at %i px', async (width) => {
    expect(await troublesOf(browser, paths, width)).toEqual([]);
  });

  it('show every table whole at 1280 px: nothing says there that it goes on', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, bypassCSP: true });
    const found: string[] = [];
    for (const path of paths) {
      await page.goto(pathToFileURL(path).href);
      const over = await page.evaluate(() => {
        for (const one of document.querySelectorAll('details')) one.open = true;
        return [...document.querySelectorAll('.scroll')]
          .filter((one) => one.scrollWidth > one.clientWidth)
          .map((one) => `${one.getAttribute('aria-label')}: ${one.scrollWidth - one.clientWidth} px`);
      });
      found.push(...over.map((told) => `${basename(path)}: ${told}`));
    }
    expect(found).toEqual([]);
    await page.close();
  });

  it('cut no word of a figure at 360 px', async () => {
    const page = await browser.newPage({ viewport: { width: 360, height: 900 }, bypassCSP: true });
    const found: string[] = [];
    for (const path of paths) {
      await page.goto(pathToFileURL(path).href);
      found.push(...(await cutWords(page)).map((told) => `${basename(path)}: ${told}`));
    }
    expect(found).toEqual([]);
    await page.close();
  });

  it.each(WINDOWS)('break no rule of axe-core at $width px, $colorScheme', async (window) => {
    // Of the bare season the pages that have fewest numbers; the others are alike in what axe looks at.
    const some = paths.filter((path) => !path.startsWith(bare) || /index|fan-energy|year-end/.test(path));
    expect(await brokenRules(browser, some, window)).toEqual([]);
  });

  it('show at 360 px that a table goes on sideways, and let the keyboard scroll it', async () => {
    const page = await browser.newPage({ viewport: { width: 360, height: 900 } });
    const found: string[] = [];
    let wide = 0;
    for (const path of paths) {
      const name = basename(path);
      await page.goto(pathToFileURL(path).href);
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
    await page.goto(pathToFileURL(join(work, 'index.html')).href);
    const first = page.locator('.scroll').first();
    await first.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
    // Asked from outside: the page itself lets nothing be evaluated.
    await expect.poll(() => first.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
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

  it.each(PAPERS)(
    'print on %s without a cut table, row or figure, on white whatever the theme',
    async (paper, widthMm, heightMm) => {
      const sheet = { width: px(widthMm - 30), height: px(heightMm - 36) };
      const page = await browser.newPage({ viewport: sheet, colorScheme: 'dark', bypassCSP: true });
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const wrong: string[] = [];
      const total = { figures: 0, rows: 0, goOn: 0 };
      for (const path of paths) {
        const name = path.slice(work.length + 1);
        await page.goto(pathToFileURL(path).href);
        const found = await page.evaluate((most) => {
          const boxes = [...document.querySelectorAll('table,figure')].map((one) => ({
            id: one.id,
            right: one.getBoundingClientRect().right,
          }));
          return {
            wide: boxes.filter(({ right }) => right > most + 1).map(({ id }) => id),
            // Two columns of a sheet have room for a table of what, value and unit.
            halved: [...document.querySelectorAll('.scroll')]
              .filter((one) => getComputedStyle(one).columnCount !== 'auto' && one.querySelector('th:nth-child(4)'))
              .map((one) => one.getAttribute('aria-label')),
            paper: getComputedStyle(document.documentElement).backgroundColor,
            ink: getComputedStyle(document.documentElement).color,
          };
        }, sheet.width);
        expect([found.paper, found.ink], name).toEqual(['rgb(255, 255, 255)', 'rgb(29, 31, 32)']);
        wrong.push(...(await cutWords(page)).map((told) => `${name}: the sheet's edge cuts ${told}`));
        const { cut, headless, goOn, figures, rows } = await onPaper(page, paper);
        wrong.push(...found.wide.map((id) => `${name}: ${id} is wider than the sheet`));
        wrong.push(...found.halved.map((label) => `${name}: ${label} is squeezed into columns`));
        wrong.push(...[...cut, ...headless].map((told) => `${name}: ${told}`));
        total.figures += figures;
        total.rows += rows;
        total.goOn += goOn.length;
      }
      expect(wrong).toEqual([]);
      expect(total.figures).toBeGreaterThan(40);
      expect(total.rows).toBeGreaterThan(500);
      // Some tables are longer than a sheet has room for: the test has heads to look for.
      expect(total.goOn).toBeGreaterThan(1);
      await page.close();
    },
  );

  it('print the methods on 16 sheets or fewer: what the season did not use stays on the page', async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(work, 'methods.html')).href);
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    const sheets = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(sheets).toBeGreaterThan(4);
    // 15 until the definitions of condition came.
    expect(sheets).toBeLessThanOrEqual(16);
    await page.close();
  });
});
