import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/errors.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';
import { loadOf } from './readers/load-of.ts';
import { fileOf } from './readers/season-of.ts';

const columns = {
  time: { header: 'time', unit: null },
  fan: { header: 'fan', unit: null },
  current: { header: 'amps', unit: 'A' },
};
const files = { 'fans.csv': 'time,fan,amps\n2024-10-04 13:00,F1,30\n2024-10-04 14:00,F1,30\n' };
const load = (starts: number | null, ends: number | null) =>
  loadOf(files, [fileOf('fan', 'fans.csv', { columns })], { startsMs: starts, endsMs: ends });

// Chicago: 1 September 2025 begins at 5:00 UTC, 1 May 2026 ends at 5:00 UTC of the 2nd.
describe('bounds that leave out every reading of the logs', () => {
  it('are an error that names the bounds by local days, the file and how many values', async () => {
    const told = await load(Date.UTC(2025, 8, 1, 5), Date.UTC(2026, 4, 2, 5)).catch((error) => error);
    expect(told).toBeInstanceOf(InputError);
    expect(told.problems).toHaveLength(1);
    expect(told.problems[0]).toMatchObject({ code: 'SEASON_BOUNDS', file: 'season.yaml' });
    expect(told.message).toMatch(/from 2025-09-01 to 2026-05-01 only, and all 2 values of fans\.csv lie outside/);
  });

  it('of one file alone: the others are read, and the page tells of that file what lies outside', async () => {
    const old = 'time,fan,amps\n2023-10-04 13:00,F1,30\n2023-10-04 14:00,F1,30\n2023-10-04 15:00,F1,0\n';
    const both = [fileOf('fan', 'fans.csv', { columns }), fileOf('fan', 'old.csv', { columns })];
    // Chicago: 1 September 2024 begins at 5:00 UTC.
    const bounds = { startsMs: Date.UTC(2024, 8, 1, 5), endsMs: null };
    const { load: told } = await loadOf({ ...files, 'old.csv': old }, both, bounds);
    expect(told.totals).toMatchObject({ cells: 5, outside: 3 });
    const found = told.findings.filter(({ where }) => where.endsWith('.csv'));
    expect(found).toHaveLength(1);
    expect(found[0].where).toBe('old.csv');
    expect(found[0].text).toMatch(/from 2024-09-01 only, and all 3 values of this file lie outside/);
    expect(found[0].advice).toContain('starts and ends');
  });

  it('are none as long as one reading is inside, or where there are no bounds', async () => {
    // 13:00 in Chicago is 18:00 UTC: the second reading is left out.
    const { load: some } = await load(null, Date.UTC(2024, 9, 4, 18, 30));
    expect(some.totals).toMatchObject({ outside: 1, cells: 2 });
    const { load: all } = await load(null, null);
    expect(all.totals.outside).toBe(0);
  });
});

describe('problems of season.yaml that show only as the logs are read', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bounds-at-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  /** Line and column, counted from 1, of a text in season.yaml. */
  const placeOf = (yaml: string, text: string) => {
    const before = yaml.slice(0, yaml.indexOf(text));
    return { line: before.split('\n').length, column: before.length - before.lastIndexOf('\n') };
  };
  const told = async (edit: (yaml: string) => string) => {
    makeSeasonFolder(folder, { ...SMALL_SEASON, hours: 48 });
    const path = join(folder, 'season.yaml');
    const yaml = edit(readFileSync(path, 'utf8').replace(', filled: 2024-10-04', ''));
    writeFileSync(path, yaml);
    const season = await readSeason(folder);
    const load = () =>
      loadSeason(season).then(
        () => null,
        (error: InputError) => error.problems,
      );
    return { yaml, load };
  };

  it.each([
    ['both bounds', 'starts: 2020-01-01\nends: 2020-02-01\n', '2020-01-01'],
    ['the end alone', 'ends: 2020-02-01\n', '2020-02-01'],
  ])('%s: the place is that of the first date', async (_, bounds, date) => {
    const { yaml, load } = await told((text) => text.replace('site:', `${bounds}site:`));
    expect(await load()).toMatchObject([{ code: 'SEASON_BOUNDS', ...placeOf(yaml, date) }]);
  });

  it('a file that went away since, or that is empty, tells where season.yaml names it', async () => {
    const { yaml, load } = await told((text) => text);
    rmSync(join(folder, 'logs', 'fans.csv'));
    writeFileSync(join(folder, 'weather', 'site.csv'), '');
    const at = (path: string) => {
      const { line, column } = placeOf(yaml, path);
      return expect.stringMatching(new RegExp(`It is named in season\\.yaml:${line}:${column}\\.$`));
    };
    expect(await load()).toMatchObject([
      { code: 'FILE_READ', file: 'logs/fans.csv', message: at('logs/fans.csv') },
      { code: 'FILE_EMPTY', file: 'weather/site.csv', message: at('weather/site.csv') },
    ]);
  });
});
