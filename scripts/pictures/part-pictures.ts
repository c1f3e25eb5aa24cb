import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';

/** What README shows: a page's top, or one figure. */
const PARTS: readonly { name: string; file: string; figure?: string; dark?: true }[] = [
  { name: 'overview', file: 'index.html' },
  { name: 'worth', file: 'index.html', figure: '#worth-steps' },
  { name: 'fan-hours', file: 'fan-energy.html', figure: '#useful-hours' },
  { name: 'temperature', file: 'moisture.html', figure: '#bin-b1-temperature-section', dark: true },
  { name: 'fronts', file: 'fronts.html', figure: '#bins-map' },
  { name: 'strategies', file: 'strategies.html', figure: 'figure[id*="-ways-"]' },
];
const MARGIN = 24;

/** @returns how many pictures were made; a figure that the review does not have is left out */
export async function partPictures(browser: Browser, review: string, out: string): Promise<number> {
  let made = 0;
  for (const { name, file, figure, dark } of PARTS) {
    const path = join(review, file);
    if (!existsSync(path)) continue;
    const page = await browser.newPage({
      viewport: { width: 1024, height: 1180 },
      colorScheme: dark === true ? 'dark' : 'light',
    });
    await page.goto(pathToFileURL(path).href);
    const box =
      figure === undefined
        ? null
        : await page
            .locator(figure)
            .first()
            .boundingBox({ timeout: 2000 })
            .catch(() => null);
    if (figure === undefined || box !== null) {
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
