import type { Browser } from 'playwright-core';
import { findChromium } from '../../scripts/pdf/find-chromium.ts';
import { startBrowser } from '../../scripts/pdf/with-browser.ts';

/** The installed Chromium; null where there is none. */
export const CHROMIUM = findChromium(null);
/** Without a browser there is nothing to open pages with; CI installs it, and fails there without. */
export const NO_BROWSER = CHROMIUM === null && process.env.CI !== 'true';

/** @throws Error where no Chromium is installed */
export function testBrowser(): Promise<Browser> {
  if (CHROMIUM === null) throw new Error('no Chromium is installed');
  return startBrowser(CHROMIUM);
}
