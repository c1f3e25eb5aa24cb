import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page as Tab } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { estimate } from '../../src/base/estimate.ts';
import { binSection } from '../../src/report/figures/bin-section.ts';
import { costByBin } from '../../src/report/figures/cost-by-bin.ts';
import { renderPage } from '../../src/report/html/page.ts';
import { Units } from '../../src/report/units.ts';
import { NO_BROWSER, testBrowser } from '../support/browser.ts';

const DAY = 86_400_000;
const units = new Units('us', 'USD', 'America/Chicago');

// Two rows of four days, as degrees C: 0, a gap, 20, 20 below; 10 above. So 32 °F, none, 68, 68; 50.
const section = binSection(
  {
    id: 's',
    title: 'A section',
    quantity: 'temperature',
    columnMs: [0, 1, 2, 3].map((day) => Date.UTC(2024, 10, 1) + day * DAY),
    columnWidthMs: DAY,
    rows: [
      { lowM: 0, highM: 2 },
      { lowM: 2, highM: 4 },
    ],
    values: Float64Array.from([0, Number.NaN, 20, 20, 10, 10, 10, 10]),
    surface: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 4 }],
    fanDays: [],
    readings: { shown: 7, of: 8, empty: 0 },
  },
  units,
);
const costs = costByBin(
  {
    id: 'c',
    title: 'Costs',
    quantity: 'money per grain point',
    bins: [
      { name: 'Cheap', cost: estimate(0.02, 0.01, 0.03) },
      { name: 'Dear', cost: estimate(0.05, 0.04, 0.06) },
    ],
  },
  units,
);
const page = renderPage(
  {
    id: 'p',
    file: 'p.html',
    title: 'A page',
    question: 'What is read out?',
    answer: 'Two figures.',
    units,
    madeBy: {
      seasonTitle: 'Season',
      farm: null,
      command: 'none',
      version: '0',
      generatedAtMs: 0,
      inputs: [],
      changedDefaults: [],
    },
    keyNumbers: [],
    sections: [{ id: 'one', title: 'One', lead: 'Two figures.', figures: [section, costs] }],
    warnings: [],
    cautions: [],
    sources: [],
  },
  [],
);

describe.skipIf(NO_BROWSER)('values read out of figures', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-read-'));
  const file = join(work, 'p.html');
  let browser: Browser;
  beforeAll(async () => {
    writeFileSync(file, page.html);
    browser = await testBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(work, { recursive: true, force: true });
  });
  const open = async (width: number, more = {}): Promise<{ tab: Tab; troubles: string[] }> => {
    const tab = await browser.newPage({ viewport: { width, height: 900 }, ...more });
    const troubles: string[] = [];
    tab.on('pageerror', (error) => troubles.push(error.message));
    tab.on('console', (message) => troubles.push(message.text()));
    await tab.goto(pathToFileURL(file).href);
    return { tab, troubles };
  };

  it.each([1280, 360])('by the pointer, the cell or the nearest dot, at %i px', async (width) => {
    const { tab, troubles } = await open(width);
    const frame = tab.locator(`#one-s .at-${width > 704 ? 'wide' : 'narrow'}`);
    const cells = await frame.locator('[data-grid]').boundingBox();
    expect(cells).not.toBeNull();
    const read = frame.locator('.read');
    const at = async (x: number, y: number) => {
      await tab.mouse.move(cells!.x + x * cells!.width, cells!.y + y * cells!.height);
      return read.textContent();
    };
    expect(await at(0.1, 0.9)).toBe('1 Nov 2024, 0.0 to 6.6 ft: 32 °F');
    expect(await at(0.35, 0.9)).toBe('2 Nov 2024, 0.0 to 6.6 ft: no reading');
    expect(await at(0.95, 0.1)).toBe('4 Nov 2024, 6.6 to 13.1 ft: 50 °F');
    // The words stay inside the window.
    const box = await read.boundingBox();
    expect(box!.x).toBeGreaterThanOrEqual(0);
    expect(box!.x + box!.width).toBeLessThanOrEqual(width);
    await tab.mouse.move(1, 1);
    expect(await read.isVisible()).toBe(false);
    const dots = tab.locator(`#one-c .at-${width > 704 ? 'wide' : 'narrow'}`);
    await dots.scrollIntoViewIfNeeded();
    const dot = await dots.locator('circle').nth(1).boundingBox();
    await tab.mouse.move(dot!.x + 12, dot!.y + 2);
    expect(await dots.locator('.read').textContent()).toBe('Dear: 0.050 (0.040 to 0.060) USD/bu-point');
    expect(troubles).toEqual([]);
    await tab.close();
  });

  it('by the arrow keys, said aloud', async () => {
    const { tab, troubles } = await open(1280);
    await tab.locator('#one-s .at-wide').focus();
    const heard = tab.locator('#one-s [role=status]');
    const press = async (key: string) => {
      await tab.keyboard.press(key);
      return heard.textContent();
    };
    await tab.locator('#one-s .at-wide').press('Tab');
    await tab.keyboard.press('Shift+Tab');
    // A hint for those who see, before the first value.
    expect(await tab.locator('#one-s .at-wide .read').textContent()).toBe('Arrow keys read values out');
    expect(await press('ArrowRight')).toBe('1 Nov 2024, 0.0 to 6.6 ft: 32 °F');
    expect(await press('ArrowRight')).toBe('2 Nov 2024, 0.0 to 6.6 ft: no reading');
    expect(await press('ArrowUp')).toBe('2 Nov 2024, 6.6 to 13.1 ft: 50 °F');
    expect(await press('End')).toBe('4 Nov 2024, 6.6 to 13.1 ft: 50 °F');
    expect(await press('ArrowDown')).toBe('4 Nov 2024, 0.0 to 6.6 ft: 68 °F');
    await tab.keyboard.press('Escape');
    expect(await tab.locator('#one-s .at-wide .read').isVisible()).toBe(false);
    // Tab leaves the figure for the next.
    await tab.keyboard.press('Tab');
    await tab.keyboard.press('ArrowRight');
    expect(await tab.locator('#one-c [role=status]').textContent()).toBe('Cheap: 0.020 (0.010 to 0.030) USD/bu-point');
    expect(troubles).toEqual([]);
    await tab.close();
  });

  it('or not at all where no script runs, and nothing is lost', async () => {
    const { tab } = await open(1280, { javaScriptEnabled: false });
    expect(await tab.locator('#one-s .at-wide svg').isVisible()).toBe(true);
    expect(await tab.locator('#one-s .at-wide').getAttribute('role')).toBe('img');
    expect(await tab.locator('#one-c circle title').count()).toBeGreaterThan(0);
    await tab.close();
  });
});
