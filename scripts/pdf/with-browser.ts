import type { Browser } from 'playwright-core';

/** Nothing that a page of the kit holds is fetched, and nothing of the browser's own should be. */
const QUIET = ['--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** Start an installed Chromium. @param executablePath  as `findChromium` */
export async function startBrowser(executablePath: string): Promise<Browser> {
  // Half a second to load, for reviews that print nothing.
  const { chromium } = await import('playwright-core');
  return chromium.launch({ executablePath, args: QUIET });
}

/** Work with an installed Chromium, which is closed whatever comes. @param executablePath  as `findChromium` */
export async function withBrowser<T>(executablePath: string, work: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await startBrowser(executablePath);
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}
