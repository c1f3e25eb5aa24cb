import { type Browser, chromium } from 'playwright-core';

/** Work with an installed Chromium, which is closed whatever comes. */
export async function withBrowser<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}
