import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { UsageError } from '../command-line.ts';

/** Names that the browser goes by where programs are looked for. */
const NAMES = ['chromium', 'chromium-browser', 'chromium.exe'];

/** Where it is put outside of these, by system. */
const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/local/bin/chromium',
  '/snap/bin/chromium',
  '/opt/homebrew/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Chromium\\Application\\chrome.exe',
];

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The Chromium that prints, an installed one; nothing is fetched.
 *
 * @param stated  from the command line; null: CHROMIUM_PATH, then the search path, then the usual places
 * @returns       its path; null where none is found
 * @throws        UsageError where a stated one is none that can be run
 */
export function findChromium(
  stated: string | null,
  env: Readonly<Record<string, string | undefined>> = process.env,
  usual: readonly string[] = USUAL,
): string | null {
  const named: [string, string | undefined][] = [
    ['--chromium', stated ?? undefined],
    ['CHROMIUM_PATH', env.CHROMIUM_PATH],
  ];
  for (const [from, path] of named) {
    if (path === undefined || path === '') continue;
    if (runs(path)) return path;
    const message = `${from} is "${path}", which is no program that can be run. Give the path of an installed Chromium, e.g. /usr/bin/chromium.`;
    throw new UsageError([{ code: 'CHROMIUM', message }]);
  }
  const onPath = (env.PATH ?? '').split(delimiter).flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...usual].find(runs) ?? null;
}

/** What is said where a PDF was asked for and there is no browser to print it. */
export const NO_CHROMIUM =
  'No PDF: no Chromium was found. Install one (on Debian: apt-get install chromium), or name it by --chromium PATH or CHROMIUM_PATH; any browser built on Chromium will do. The HTML is whole, and prints from any browser.';
