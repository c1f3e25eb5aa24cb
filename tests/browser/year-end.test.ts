import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPdf } from '../../scripts/pdf/heading-sheets.ts';
import { reportPdf } from '../../scripts/pdf/report-pdf.ts';
import { runYearEnd } from '../../scripts/year-end/run-year-end.ts';
import { renderDocument } from '../../src/report/html/document.ts';
import { makeBareSeason } from '../support/bare-season.ts';
import { CHROMIUM, NO_BROWSER, testBrowser } from '../support/browser.ts';
import { onPaper } from '../support/on-paper.ts';
import { brokenRules, TOO_WIDE, WINDOWS } from '../support/page-checks.ts';
import { type Sheet, sheetsOf } from '../support/pdf-sheets.ts';
import { seasonPages } from '../support/season-pages.ts';

const MADE_MS = Date.UTC(2025, 4, 20);

/** Headings as the HTML has them, in order: id and text. */
function headingsOf(html: string): { id: string; title: string }[] {
  return [...html.matchAll(/<h[23][^>]*? id="([^"]+)"[^>]*>([^<]+)<\/h[23]>/g)]
    .filter(([, , title]) => /^\d/.test(title))
    .map(([, id, title]) => ({ id, title: title.replaceAll('&#39;', '’').replace(/[\s\u00a0]+/g, ' ') }));
}

interface Report {
  name: string;
  /** at the top of every sheet but the cover */
  place: string;
  paper: 'letter' | 'a4';
  /** about as many sheets as its sections need */
  sheets: readonly [number, number];
  /** beginnings of the files that it names */
  reads: readonly string[];
  /** writes year-end.html and year-end.pdf into a folder */
  make(out: string, work: string): Promise<void>;
}

async function ofFolder(
  season: string,
  out: string,
  paper: Report['paper'],
  more: { previous?: string; farm?: string },
) {
  const done = await runYearEnd({
    seasons: [season],
    wishes: {
      out,
      summary: null,
      previous: more.previous ?? null,
      models: false,
      keep: false,
      preparedFor: more.farm ?? null,
      preparedBy: 'A. Consultant',
      date: '20 May 2025',
      pdf: { paper, chromium: CHROMIUM },
      units: 'us',
    },
    generatedAtMs: MADE_MS,
    say: () => {},
  });
  expect(done.failures).toEqual([]);
}

const REPORTS: readonly Report[] = [
  {
    name: 'the sample, with the season before',
    place: 'Sorrel Fork (an invented farm), Harvest 2024',
    paper: 'letter',
    sheets: [20, 34],
    reads: ['>logs/', '>sorrel-fork-2023/logs/'],
    make: (out) =>
      ofFolder(resolve('data-samples/sorrel-fork'), out, 'letter', {
        previous: resolve('data-samples/sorrel-fork-2023'),
      }),
  },
  {
    name: 'a farm of one bin without tariff, prices or bills',
    place: 'A Farm (invented), Made for a test',
    paper: 'a4',
    sheets: [8, 18],
    reads: ['>logs/'],
    make: (out, work) => {
      makeBareSeason(join(work, 'season'));
      return ofFolder(join(work, 'season'), out, 'a4', { farm: 'A Farm (invented)' });
    },
  },
  {
    name: 'a farm of two bins, of which one has a trusted model',
    place: 'Thistle Reach (invented), Made for a test',
    paper: 'a4',
    sheets: [14, 26],
    reads: ['>logs/'],
    make: async (out) => {
      const { kit } = await seasonPages({ madeMs: MADE_MS, date: '20 May 2025' });
      const page = kit.find(({ cover }) => cover !== undefined)!;
      mkdirSync(out);
      writeFileSync(join(out, 'year-end.html'), renderDocument(page, [{ file: page.file, title: page.title }]).html);
      writeFileSync(join(out, 'year-end.pdf'), await reportPdf(page, String(CHROMIUM), 'a4'));
    },
  },
];
const SIZES = { letter: [612, 792], a4: [595, 842] };

describe.skipIf(NO_BROWSER).each(REPORTS)(
  'the year-end report of $name as PDF',
  ({ place, paper, sheets, reads, make }) => {
    const work = mkdtempSync(join(tmpdir(), 'fanbook-year-end-'));
    const out = join(work, 'out');
    let browser: Browser;
    let pdf: Uint8Array;
    let html = '';
    let pages: Sheet[] = [];

    beforeAll(async () => {
      await make(out, work);
      pdf = readFileSync(join(out, 'year-end.pdf'));
      html = readFileSync(join(out, 'year-end.html'), 'utf8');
      pages = await sheetsOf(pdf);
      browser = await testBrowser();
    });
    afterAll(async () => {
      await browser?.close();
      rmSync(work, { recursive: true, force: true });
    });

    it('has the paper and about as many sheets as its sections need, none of them empty', async () => {
      const document = await openPdf(pdf);
      const [, , right, top] = (await document.getPage(1)).view;
      await document.destroy();
      expect([Math.round(right), Math.round(top)]).toEqual(SIZES[paper]);
      expect(pages.length).toBeGreaterThanOrEqual(sheets[0]);
      expect(pages.length).toBeLessThanOrEqual(sheets[1]);
      // Beyond the running head and foot every sheet says something.
      for (const [i, { lines }] of pages.entries()) expect(lines.length, `sheet ${i + 1}`).toBeGreaterThan(4);
    });

    it('names the files that it was made from, those of the season before too', () => {
      for (const path of reads) expect(html).toContain(path);
    });

    it('bears farm, season and its number on every sheet but the cover', () => {
      const text = ({ lines }: Sheet) => lines.join('\n');
      expect(text(pages[0])).not.toMatch(/Page \d/);
      expect(text(pages[0])).toContain('A. Consultant');
      expect(text(pages[0])).toContain('20 May 2025');
      for (const [i, page] of pages.entries()) {
        if (i === 0) continue;
        expect(page.lines[0], `sheet ${i + 1}`).toContain(place);
        expect(text(page), `sheet ${i + 1}`).toContain(`Page ${i + 1} of ${pages.length}`);
      }
    });

    it('has true page numbers in its contents: each heading stands on the sheet that they say', () => {
      const headings = headingsOf(html);
      expect(headings.length).toBeGreaterThan(15);
      // The contents may stand in two columns, two of them on a line.
      const contents = pages[0].lines.join('\n');
      for (const { title } of headings) {
        const escaped = title.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
        const told = new RegExp(`(?:^|\\s)${escaped} (\\d+)(?:\\s|$)`, 'm').exec(contents);
        expect(told, `${title} in ${contents}`).not.toBeNull();
        const sheet = Number(told?.[1]);
        const there = pages[sheet - 1]?.lines.some((line) => line === title);
        expect(there, `${title} is not on sheet ${sheet}`).toBe(true);
      }
    });

    it('is printed at its own size: nothing is so wide that the printer shrinks every sheet', () => {
      // 9.5 pt on paper; the answer is a quarter larger.
      const answer = pages[1].sizes.find(({ text }) => /^(The fans|Can’t tell)/.test(text));
      expect(answer?.size).toBeCloseTo(9.5 * 1.25, 1);
    });

    it('cuts no figure and no row over the edge of a sheet, and repeats caption and heads of tables that go on', async () => {
      const page = await browser.newPage({ bypassCSP: true });
      await page.emulateMedia({ media: 'print' });
      await page.goto(pathToFileURL(join(out, 'year-end.html')).href);
      const { cut, headless, figures, rows } = await onPaper(page, paper === 'a4' ? 'A4' : 'Letter');
      await page.close();
      expect([...cut, ...headless]).toEqual([]);
      expect(figures).toBeGreaterThan(4);
      expect(rows).toBeGreaterThan(20);
    });

    it('numbers its figures from 1 on, and puts the summary on the first sheet after the cover', () => {
      const all = pages.map(({ lines }) => lines.join(' ')).join(' ');
      const numbers = [...all.matchAll(/Figure (\d+)\./g)].map(([, n]) => Number(n)).sort((a, b) => a - b);
      expect(numbers).toEqual(Array.from({ length: numbers.length }, (_, i) => i + 1));
      expect(numbers.length).toBeGreaterThan(4);
      expect(pages[1].lines.slice(0, 3)).toContain('1 Summary');
      expect(pages[2].lines.slice(0, 3)).toContain('2 The farm and its bins');
    });

    it.each(WINDOWS)(
      'as a page breaks no rule of axe-core in the $colorScheme theme at $width px, and does not scroll sideways',
      async (window) => {
        const path = join(out, 'year-end.html');
        const page = await browser.newPage({ viewport: { width: window.width, height: 900 } });
        await page.goto(pathToFileURL(path).href);
        expect(await page.evaluate(TOO_WIDE)).toBe(0);
        await page.close();
        expect(await brokenRules(browser, [path], window)).toEqual([]);
      },
    );

    it('bears the stated time in place of the printer’s clock', async () => {
      const document = await openPdf(pdf);
      const info = (await document.getMetadata()).info as Record<string, string>;
      await document.destroy();
      expect(info.CreationDate).toBe("D:20250520000000+00'00'");
      expect(info.ModDate).toBe(info.CreationDate);
    });
  },
);
