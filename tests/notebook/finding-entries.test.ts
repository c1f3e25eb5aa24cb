import { expect, it } from 'vitest';
import { findingEntries, findingTable } from '../../src/notebook/load-tables.ts';
import { Units } from '../../src/report/units.ts';
import type { Finding } from '../../src/season/loaded.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const finding = (where: string): Finding =>
  ({ kind: 'stuck', where, fromMs: null, toMs: null, cells: 3, text: 'It stood still.', advice: null }) as Finding;

it('is printed once: as a table only where more were found of a kind than words tell of', () => {
  const some = (count: number) => Array.from({ length: count }, (_, i) => finding(`logs/${i}.csv`));
  expect(findingTable(some(12)).folded).toBe('on screen');
  expect(findingTable(some(13)).folded).toBe(true);
  expect(findingEntries(some(13), units, [])[0].text).toContain('all stand in the table');
});

it('begins with a capital, but for the name of a file', () => {
  const [{ details = [] }] = findingEntries([finding('fan F1'), finding('logs/a.csv')], units, []);
  expect(details.map((text) => text.split('. ')[0])).toEqual(['Fan F1', 'logs/a.csv']);
});
