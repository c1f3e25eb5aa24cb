import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { headingSheets, openPdf } from '../../scripts/pdf/heading-sheets.ts';
import { runYearEnd } from '../../scripts/year-end/run-year-end.ts';
import { makeSeasonFolder } from '../support/season-folder.ts';

const CHROMIUM = '/usr/bin/chromium';
const skip = !existsSync(CHROMIUM) && process.env.CI !== 'true';
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const MADE_MS = Date.UTC(2025, 4, 20);

interface Sheet {
  /** lines of text, top to bottom */
  lines: string[];
  /** size of each piece of text, points, by the piece */
  sizes: { text: string; size: number }[];
}

/** Every sheet of a PDF as lines of text: pieces at one height belong together. */
async function sheetsOf(pdf: Uint8Array): Promise<Sheet[]> {
  const document = await openPdf(pdf);
  const out: Sheet[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const { items } = await (await document.getPage(n)).getTextContent();
    const rows = new Map<number, { x: number; end: number; text: string }[]>();
    const sizes: Sheet['sizes'] = [];
    for (const item of items) {
      if (!('str' in item) || item.str === '') continue;
      const [a, b, , , x, y] = item.transform;
      const row = rows.get(Math.round(y)) ?? [];
      rows.set(Math.round(y), row);
      row.push({ x, end: x + item.width, text: item.str });
      sizes.push({ text: item.str, size: Math.hypot(a, b) });
    }
    const lines = [...rows].sort((one, other) => other[0] - one[0]).map(([, row]) => lineOf(row));
    out.push({ lines, sizes });
  }
  await document.destroy();
  return out;
}

/** Pieces at one height from left to right, with a blank where there is a gap. */
function lineOf(row: readonly { x: number; end: number; text: string }[]): string {
  const sorted = [...row].sort((a, b) => a.x - b.x);
  const text = sorted.map((one, i) => (i > 0 && one.x - sorted[i - 1].end > 1 ? ` ${one.text}` : one.text)).join('');
  return text.replace(/\s+/g, ' ').trim();
}

/** Headings as the HTML has them, in order: id and text. */
function headingsOf(html: string): { id: string; title: string }[] {
  return [...html.matchAll(/<h[23][^>]*? id="([^"]+)"[^>]*>([^<]+)<\/h[23]>/g)]
    .filter(([, , title]) => /^\d/.test(title))
    .map(([, id, title]) => ({ id, title: title.replaceAll('&#39;', '’').replace(/[\s\u00a0]+/g, ' ') }));
}

/** The HTML with a mark at both ends of every figure, and links to the marks, so that a PDF knows their sheets. */
function marked(html: string): { html: string; figures: number } {
  let figures = 0;
  let ended = 0;
  const body = html
    .replace(/<figcaption>/g, () => `<figcaption><i id="fig-from-${++figures}"></i>`)
    .replace(/<\/figure>/g, () => `<i id="fig-to-${++ended}"></i></figure>`);
  const ids = Array.from({ length: figures }, (_, i) => [`fig-from-${i + 1}`, `fig-to-${i + 1}`]).flat();
  const links = ids.map((id) => `<a href="#${id}" style="font-size:1px">.</a>`).join('');
  return { html: body.replace('</main>', `${links}</main>`), figures };
}

const SEASONS = [
  { name: 'the sample, with the season before', paper: 'letter', width: 612, height: 792, sheets: [20, 34] },
  { name: 'a farm of one bin without prices', paper: 'a4', width: 595, height: 842, sheets: [8, 18] },
] as const;

describe.skipIf(skip).each(SEASONS)('the year-end report of $name as PDF', ({ name, paper, width, height, sheets }) => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-year-end-'));
  const out = join(work, 'out');
  let browser: Browser;
  let pdf: Uint8Array;
  let html = '';
  let pages: Sheet[] = [];

  beforeAll(async () => {
    const sample = name.startsWith('the sample');
    const season = sample ? resolve('data-samples/sorrel-fork') : join(work, 'season');
    if (!sample) {
      makeSeasonFolder(season);
    }
    const done = await runYearEnd({
      seasons: [season],
      wishes: {
        out,
        summary: null,
        previous: sample ? resolve('data-samples/sorrel-fork-2023') : null,
        models: false,
        keep: false,
        preparedFor: sample ? null : 'A Farm (invented)',
        preparedBy: 'A. Consultant',
        date: '20 May 2025',
        pdf: { paper, chromium: CHROMIUM },
        units: 'us',
      },
      generatedAtMs: MADE_MS,
      say: () => {},
    });
    expect(done.failures).toEqual([]);
    pdf = readFileSync(join(out, 'year-end.pdf'));
    html = readFileSync(join(out, 'year-end.html'), 'utf8');
    pages = await sheetsOf(pdf);
    browser = await chromium.launch({ executablePath: CHROMIUM });
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });

  it('has the paper and about as many sheets as its sections need, none of them empty', async () => {
    const document = await openPdf(pdf);
    const [, , right, top] = (await document.getPage(1)).view;
    await document.destroy();
    expect([Math.round(right), Math.round(top)]).toEqual([width, height]);
    expect(pages.length).toBeGreaterThanOrEqual(sheets[0]);
    expect(pages.length).toBeLessThanOrEqual(sheets[1]);
    // Beyond the running head and foot every sheet says something.
    for (const [i, { lines }] of pages.entries()) expect(lines.length, `sheet ${i + 1}`).toBeGreaterThan(4);
  });

  it('bears farm, season and its number on every sheet but the cover', () => {
    const farm = name.startsWith('the sample')
      ? 'Sorrel Fork (an invented farm), Harvest 2024'
      : 'A Farm (invented), Made for a test';
    const text = ({ lines }: Sheet) => lines.join('\n');
    expect(text(pages[0])).not.toMatch(/Page \d/);
    expect(text(pages[0])).toContain('A. Consultant');
    expect(text(pages[0])).toContain('20 May 2025');
    for (const [i, page] of pages.entries()) {
      if (i === 0) continue;
      expect(page.lines[0], `sheet ${i + 1}`).toContain(farm);
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

  it('cuts no figure over the edge of a sheet', async () => {
    const { html: with_, figures } = marked(html);
    expect(figures).toBeGreaterThan(4);
    const page = await browser.newPage();
    await page.setContent(with_);
    const again = await page.pdf({ format: paper === 'a4' ? 'A4' : 'Letter' });
    await page.close();
    const ids = Array.from({ length: figures }, (_, i) => i + 1);
    const at = await headingSheets(
      again,
      ids.flatMap((n) => [`fig-from-${n}`, `fig-to-${n}`]),
    );
    expect(at.size).toBe(2 * figures);
    for (const n of ids) expect(at.get(`fig-to-${n}`), `figure ${n}`).toBe(at.get(`fig-from-${n}`));
  });

  it('numbers its figures from 1 on, and puts the summary on the first sheet after the cover', () => {
    const all = pages.map(({ lines }) => lines.join(' ')).join(' ');
    const numbers = [...all.matchAll(/Figure (\d+)\./g)].map(([, n]) => Number(n)).sort((a, b) => a - b);
    expect(numbers).toEqual(Array.from({ length: numbers.length }, (_, i) => i + 1));
    expect(numbers.length).toBeGreaterThan(4);
    expect(pages[1].lines.slice(0, 3)).toContain('1 Summary');
    expect(pages[2].lines.slice(0, 3)).toContain('2 The farm and its bins');
  });

  it.each([
    ['light', 1280],
    ['dark', 360],
  ] as const)(
    'as a page breaks no rule of axe-core in the %s theme at %i px, and does not scroll sideways',
    async (colorScheme, wide) => {
      const context = await browser.newContext({
        colorScheme,
        viewport: { width: wide, height: 900 },
        bypassCSP: true,
      });
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(out, 'year-end.html')).href);
      const over = await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
      expect(over).toBe(0);
      await page.evaluate(AXE);
      const found = (await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'] })",
      )) as { violations: { id: string; nodes: { html: string }[] }[]; passes: unknown[] };
      expect(found.passes.length).toBeGreaterThan(10);
      expect(found.violations.map((one) => `${one.id}: ${one.nodes[0].html}`)).toEqual([]);
      await context.close();
    },
  );

  it('bears the stated time in place of the printer’s clock', async () => {
    const document = await openPdf(pdf);
    const info = (await document.getMetadata()).info as Record<string, string>;
    await document.destroy();
    expect(info.CreationDate).toBe("D:20250520000000+00'00'");
    expect(info.ModDate).toBe(info.CreationDate);
  });
});
