import { type Browser, chromium } from 'playwright-core';

/** Nothing that a page of the kit holds is fetched, and nothing of the browser's own should be. */
const QUIET = ['--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** Work with an installed Chromium, which is closed whatever comes. @param executablePath  as `findChromium` */
export async function withBrowser<T>(executablePath: string, work: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await chromium.launch({ executablePath, args: QUIET });
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}
