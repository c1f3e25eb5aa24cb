import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { madeBy, unitsOf } from '../../../scripts/review/made-by.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import type { NotebookInput } from '../../../src/notebook.ts';
import { renderPages } from '../../../src/report/html/pages.ts';
import type { Page, Table } from '../../../src/report/page.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

/** Two bins over the night when clocks go back, in a folder of their own. */
export interface TwoBins {
  folder: string;
  input: NotebookInput;
  /** of each bin */
  fanHours: number;
  clear(): void;
}

/** Of the log. */
export const HOURS = 24 * 34;

export async function twoBins(): Promise<TwoBins> {
  const folder = mkdtempSync(join(tmpdir(), 'fanbook-user-'));
  const { fanHours } = makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 2, hours: HOURS });
  const loaded = await loadSeason(await readSeason(folder));
  const input = { loaded, review: reviewSeason(loaded), units: unitsOf(loaded), made: madeBy(loaded, 'a test', 0) };
  return { folder, input, fanHours, clear: () => rmSync(folder, { recursive: true, force: true }) };
}

const clock = new Intl.DateTimeFormat('en-CA', {
  timeZone: 'America/Chicago',
  year: 'numeric',
  month: '2-digit',
  day: '2-digit',
  hour: '2-digit',
  hourCycle: 'h23',
});

/** Day and hour by the runtime's own calendar. */
export function localOf(ms: number): { day: string; hour: number } {
  const part = Object.fromEntries(clock.formatToParts(ms).map(({ type, value }) => [type, value]));
  return { day: `${part.year}-${part.month}-${part.day}`, hour: Number(part.hour) };
}

/** @throws Error where the page has no such table */
export function tableOf(page: Page, caption: string): Table {
  const tables = page.sections.flatMap((section) => section.tables ?? []);
  const found = tables.find((one) => one.caption === caption);
  if (found === undefined) throw new Error(`no table ${caption} among ${tables.map((one) => one.caption)}`);
  return found;
}

/** The page as drawn, without a failure. */
export function whole(page: Page): string {
  const [{ html, failures }] = renderPages([page]);
  expect(failures).toEqual([]);
  return html;
}
