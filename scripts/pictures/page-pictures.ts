import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';

/** Dark is laid out as wide is: its first part shows the colours. */
const VIEWS = [
  { name: 'wide', width: 1280, colorScheme: 'light', parts: Number.POSITIVE_INFINITY },
  { name: 'narrow', width: 360, colorScheme: 'light', parts: Number.POSITIVE_INFINITY },
  { name: 'dark', width: 1280, colorScheme: 'dark', parts: 1 },
] as const;
/** A page longer than this is cut into several pictures. */
const TALLEST = 4000;

/** Every page in each view, whole but in the dark one, and as a PDF on Letter. @returns how many files were made */
export async function pagePictures(browser: Browser, pages: readonly string[], out: string): Promise<number> {
  let made = 0;
  for (const { name, width, colorScheme, parts } of VIEWS) {
    const tab = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
    for (const path of pages) {
      const stem = basename(path, '.html');
      await tab.goto(pathToFileURL(path).href);
      const height = await tab.evaluate(() => document.documentElement.scrollHeight);
      for (let n = 1, top = 0; top < height && n <= parts; n++, top += TALLEST) {
        const clip = { x: 0, y: top, width, height: Math.min(TALLEST, height - top) };
        await tab.screenshot({ path: join(out, `${stem}-${name}-${n}.png`), fullPage: true, clip });
        made += 1;
      }
      if (name === 'wide') {
        await tab.pdf({ path: join(out, `${stem}.pdf`), format: 'Letter' });
        made += 1;
      }
    }
    await tab.close();
  }
  return made;
}
