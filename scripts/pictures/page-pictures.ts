import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';

const VIEWS = [
  { name: 'wide', width: 1280, colorScheme: 'light' },
  { name: 'narrow', width: 360, colorScheme: 'light' },
  { name: 'dark', width: 1280, colorScheme: 'dark' },
] as const;
/** A page longer than this is cut into several pictures. */
const TALLEST = 4000;

/** Every page whole, in each view, and as a PDF on Letter. @returns how many files were made */
export async function pagePictures(browser: Browser, pages: readonly string[], out: string): Promise<number> {
  let made = 0;
  for (const path of pages) {
    const stem = basename(path, '.html');
    for (const { name, width, colorScheme } of VIEWS) {
      const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
      await page.goto(pathToFileURL(path).href);
      const height = await page.evaluate(() => document.documentElement.scrollHeight);
      for (let top = 0, n = 1; top < height; top += TALLEST, n++) {
        const clip = { x: 0, y: top, width, height: Math.min(TALLEST, height - top) };
        await page.screenshot({ path: join(out, `${stem}-${name}-${n}.png`), fullPage: true, clip });
        made += 1;
      }
      if (name === 'wide') {
        await page.pdf({ path: join(out, `${stem}.pdf`), format: 'Letter' });
        made += 1;
      }
      await page.close();
    }
  }
  return made;
}
