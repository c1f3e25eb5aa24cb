import { afterAll, describe, expect, it } from 'vitest';
import { loadSeason } from '../../../src/season/load-season.ts';
import { zoneText } from '../../../src/season/yaml/zone-name.ts';
import { loadOf, noChecks, rowsOf } from '../readers/load-of.ts';
import { fileOf } from '../readers/season-of.ts';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { placeOf, problemsOf, read, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

const problems = (from: string, to: string) =>
  problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': EXAMPLE.replace(from, () => to) }));

describe('date and time of day in two columns', () => {
  it('from season.yaml to the table', async () => {
    const yaml = EXAMPLE.replace(
      'columns: { time: time, fan: fan,',
      'time_format: MM/dd/yyyy h:mm a\n    columns: { time: [Date, Time], fan: fan,',
    );
    const files = {
      ...EXAMPLE_FILES,
      'logs/fans.csv': 'Date,fan,Time,amps\n10/05/2024,F1,1:30 PM,20\n10/05/2024,F1,,21\n10/05/2024,F1,13h,22\n',
    };
    const season = await read(yaml, files);
    const fans = season.files.filter((one) => one.holds === 'fan');
    expect(fans[0].columns?.time).toEqual({ header: 'Date', clock: 'Time', unit: null });
    const { tables, load } = await loadSeason({ ...season, files: fans }, undefined, noChecks);
    expect(rowsOf(tables.fan).map((row) => row.time)).toEqual(['2024-10-05T18:30:00.000Z']);
    expect(load.rejects.map((one) => [one.line, one.reason])).toEqual([
      [3, 'has no time (Date, Time)'],
      [4, 'the time "10/05/2024 13h" (Date, Time) does not fit time_format MM/dd/yyyy h:mm a'],
    ]);
  });

  it('ISO dates need no format; the header is found below title lines', async () => {
    const columns = {
      time: { header: 'day', clock: 'clock', unit: null },
      fan: { header: 'unit', unit: null },
      current: { header: 'x', unit: 'A' },
    };
    const text = 'Log of the shop\n\nunit,x,day,clock\nF1,20,2024-10-05,13:30:10\n';
    const { tables } = await loadOf({ 'f.csv': text }, [fileOf('fan', 'f.csv', { columns })]);
    expect(rowsOf(tables.fan).map((row) => [row.time, row.current_a])).toEqual([['2024-10-05T18:30:10.000Z', 20]]);
  });

  it.each<[string, string, string]>([
    ['{ time: [Date], fan', 'SEASON_TYPE', 'has 1 entries; it takes two headers'],
    ['{ time: [Date, Time, Zone], fan', 'SEASON_TYPE', 'has 3 entries'],
    ['{ time: time, fan: [a, b], x-fan', 'SEASON_TYPE', 'only time may stand in two columns'],
  ])('%s is refused', async (to, code, message) => {
    const found = await problems('{ time: time, fan', to);
    expect(found).toMatchObject([{ code, message: expect.stringContaining(message) }]);
    expect(found[0].line).toBe(placeOf(EXAMPLE, '{ time: time, fan').line);
  });
});

describe('a time zone', () => {
  it('may be said of airport observations; the other archives settle it', async () => {
    const withZone = (format: string) => problems('format: epw', `format: ${format}\n    time_zone: America/Chicago`);
    expect(await withZone('asos')).toEqual([]);
    expect(await withZone('lcd')).toMatchObject([
      { code: 'SEASON_CONFLICT', message: expect.stringContaining('format lcd') },
    ]);
  });
  it.each([
    ['CST', /^site\.time_zone is "CST"; an abbreviation .* Write the place, e\.g\. America\/Chicago\.$/],
    ['EST', /America\/New_York/],
    ['PDT', /America\/Los_Angeles/],
    ['GMT', /Write UTC\./],
    ['Central', /America\/Chicago/],
    ['IST', /IANA/],
    ['Japan', /IANA/],
  ])('%s is refused for the site', async (name, message) => {
    const found = await problems('time_zone: America/Chicago\nshow', `time_zone: ${name}\nshow`);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: 'SEASON_ZONE', message: expect.stringMatching(message) });
  });
  it('of a file may be `local standard`, which a refused abbreviation names too', () => {
    expect(zoneText('CST', ['local standard'])).toMatch(
      /e\.g\. America\/Chicago, or `local standard` if the logger keeps standard time all year\.$/,
    );
  });
  it.each(['Etc/GMT+6', 'CST6CDT', 'US/Central', 'UTC', 'America/Argentina/Buenos_Aires'])(
    '%s is taken',
    async (name) => {
      expect(await problems('time_zone: America/Chicago\nshow', `time_zone: ${name}\nshow`)).toEqual([]);
    },
  );
});
