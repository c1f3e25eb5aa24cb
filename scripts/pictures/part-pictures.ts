import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';

/** What README shows: a page's top, or one part of it; on paper as it prints, as wide as the text of a Letter sheet. */
const PARTS: readonly { name: string; file: string; part?: string; dark?: true; paper?: true }[] = [
  { name: 'overview', file: 'index.html' },
  { name: 'worth', file: 'index.html', part: '#worth-steps' },
  { name: 'fan-hours', file: 'fan-energy.html', part: '#useful-hours' },
  { name: 'temperature', file: 'moisture.html', part: '#bin-b1-temperature-section', dark: true },
  { name: 'fronts', file: 'fronts.html', part: '#bins-map' },
  { name: 'strategies', file: 'strategies.html', part: 'figure[id*="-ways-"]' },
  { name: 'year-end', file: 'year-end.html', part: 'section[aria-labelledby="summary"]', paper: true },
];
const MARGIN = 24;
/** CSS px, of 8.5 in less the margins */
const PAPER_TEXT = 720;

/** @returns how many pictures were made; a part that the review does not have is left out */
export async function partPictures(browser: Browser, review: string, out: string): Promise<number> {
  let made = 0;
  for (const { name, file, part, dark, paper } of PARTS) {
    const path = join(review, file);
    if (!existsSync(path)) continue;
    const page = await browser.newPage({
      viewport: { width: paper ? PAPER_TEXT + 2 * MARGIN : 1024, height: 1180 },
      colorScheme: dark === true ? 'dark' : 'light',
    });
    if (paper) await page.emulateMedia({ media: 'print' });
    await page.goto(pathToFileURL(path).href);
    // A sheet's margins are not in a picture, and its neighbours stand close.
    if (paper)
      await page.addStyleTag({ content: `nav,section:not(${part}){display:none!important}body{padding:${MARGIN}px}` });
    const box =
      part === undefined
        ? null
        : await page
            .locator(part)
            .first()
            .boundingBox({ timeout: 2000 })
            .catch(() => null);
    if (part === undefined || box !== null) {
      const clip =
        box === null
          ? { x: 0, y: 0, width: 1024, height: 1180 }
          : { x: box.x - MARGIN, y: box.y - MARGIN, width: box.width + 2 * MARGIN, height: box.height + 2 * MARGIN };
      await page.screenshot({ path: join(out, `${name}.png`), fullPage: true, clip });
      made += 1;
    }
    await page.close();
  }
  return made;
}
