import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeSeasonFolder } from './season-folder.ts';

/** A season of one bin that says nothing of money: no tariff, no price, no bill. */
export function makeBareSeason(folder: string): void {
  makeSeasonFolder(folder);
  const path = join(folder, 'season.yaml');
  const text = readFileSync(path, 'utf8')
    .replace(/^tariffs:\n(?: .*\n)+/m, '')
    .replace(', tariff: farm', '');
  if (/tariff|price|bills/.test(text)) throw new Error('the season speaks of money');
  writeFileSync(path, text);
}
