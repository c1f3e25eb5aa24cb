import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page as Tab } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** WCAG 2.1 A and AA and the best practices of axe-core, run on what the browser really shows; without what only a report of its own needs. */
const RUN = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'],
  resultTypes: ['violations'],
  selectors: false,
  preload: false,
};

export interface Window {
  width: number;
  colorScheme: 'light' | 'dark';
}
/** Every rule is run at both widths and in both themes once. */
export const WINDOWS: readonly Window[] = [
  { width: 1280, colorScheme: 'light' },
  { width: 360, colorScheme: 'dark' },
];

/** Runs in the browser: by how many pixels a page is wider than its window. */
export const TOO_WIDE = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';

/**
 * What is wrong with pages as they open from the file system: script errors, words on the console, requests that leave the disk,
 * scrolling sideways; a line each.
 */
export async function troublesOf(browser: Browser, paths: readonly string[], width: number): Promise<string[]> {
  const tab = await browser.newPage({ viewport: { width, height: 900 } });
  const troubles: string[] = [];
  let at = '';
  tab.on('pageerror', (error) => troubles.push(`${at}: error: ${error.message}`));
  tab.on('console', (message) => troubles.push(`${at}: console: ${message.text()}`));
  tab.on('request', (request) => {
    if (!request.url().startsWith('file://')) troubles.push(`${at}: request: ${request.url()}`);
  });
  for (const path of paths) {
    at = basename(path);
    await tab.goto(pathToFileURL(path).href);
    const over = await tab.evaluate(TOO_WIDE);
    if (over !== 0) troubles.push(`${at}: ${over} px too wide for ${width} px`);
  }
  await tab.close();
  return troubles;
}

/** Words of figures, ramps and tables that the window or the sheet cuts off, as a tab shows them; a line each. What scrolls is not cut. */
export async function cutWords(tab: Tab): Promise<string[]> {
  return tab.evaluate(() => {
    const most = document.documentElement.clientWidth;
    const cut: string[] = [];
    for (const one of document.querySelectorAll('svg text, .ramp span:not(.heard), th, td')) {
      const { left, right, width } = one.getBoundingClientRect();
      const scroll = one.closest('.scroll');
      const moves = scroll !== null && getComputedStyle(scroll).overflowX !== 'visible';
      if (width === 0 || moves || (left >= -0.5 && right <= most + 0.5)) continue;
      cut.push(`${one.closest('figure,table')?.id}: ${one.textContent}`);
    }
    return cut;
  });
}

/** Rules of axe-core that pages break, a line each. @throws Error where the rules were not run */
export async function brokenRules(
  browser: Browser,
  paths: readonly string[],
  { width, colorScheme }: Window,
): Promise<string[]> {
  // The page's own policy forbids scripts, those of the test too.
  const context = await browser.newContext({ colorScheme, viewport: { width, height: 900 }, bypassCSP: true });
  const broken: string[] = [];
  for (const path of paths) {
    const tab = await context.newPage();
    await tab.goto(pathToFileURL(path).href);
    broken.push(...(await rulesOf(tab)).map((told) => `${basename(path)}: ${told}`));
    await tab.close();
  }
  await context.close();
  return broken;
}

async function rulesOf(tab: Tab): Promise<string[]> {
  await tab.evaluate(AXE);
  const found = (await tab.evaluate(`axe.run(${JSON.stringify(RUN)})`)) as {
    violations: { id: string; impact: string | null; nodes: { html: string }[] }[];
    passes: unknown[];
  };
  if (found.passes.length <= 10) throw new Error(`only ${found.passes.length} rules were found to hold`);
  return found.violations.map((one) => `${one.impact}: ${one.id}: ${one.nodes[0].html}`);
}
