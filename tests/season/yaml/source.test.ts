import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/base/errors.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { problemsOf, read, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

const LEAST = `format: 1
season: 2024
site: { time_zone: UTC }
bins: [{ id: 01, diameter: 10 m, grain: { crop: wheat, depth: 5 m } }]
`;

const bytes = (...parts: (string | number[])[]) =>
  Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part) : Buffer.from(part))));

describe('a season.yaml that is no season', () => {
  it.each([
    ['an empty file', '', 'is empty', 1, 1],
    ['comments only', '# nothing yet\n', 'comments only', 1, 1],
    ['a list', '- format: 1\n', 'a list', 1, 1],
    ['a word', 'hello\n', '"hello"', 1, 1],
    ['a binary file', bytes([0x89, 0x50, 0x4e, 0x47, 0, 0, 1]), 'binary', 1, 1],
    ['UTF-16', bytes([0xff, 0xfe, 0x66, 0]), 'UTF-16', 1, 1],
    ['Latin-1', bytes('format: 1\nseason: caf', [0xe9], '\n'), 'not UTF-8', 2, 12],
    ['a huge file', `format: 1\n${'# log\n'.repeat(200_000)}`, 'must not have more', 1, 1],
    ['endless brackets', '['.repeat(100_000), '', 1, undefined],
  ])('%s', async (_name, content, message, line, column) => {
    const problems = await problemsOf(seasonFolder({ 'season.yaml': content }));
    expect(problems[0]).toMatchObject({
      code: expect.stringMatching(/^SEASON_(FILE|YAML|TYPE)$/),
      file: 'season.yaml',
      line: expect.any(Number),
      message: expect.stringContaining(message),
    });
    if (column !== undefined) {
      expect(problems).toHaveLength(1);
      expect(problems[0]).toMatchObject({ line, column });
    }
  });

  it('tells a folder that is not there, is a file, or holds no season.yaml', async () => {
    const folder = seasonFolder({ 'season.yml': LEAST });
    expect((await problemsOf(join(folder, 'gone')))[0]).toMatchObject({
      code: 'SEASON_FILE',
      message: expect.stringContaining('cannot be opened'),
    });
    const [file] = await problemsOf(join(folder, 'season.yml'));
    expect(formatProblem(file)).toBe(
      `SEASON_FILE ${join(folder, 'season.yml')} is a file; a season is given by its folder. Give the folder that holds season.yaml.`,
    );
    expect((await problemsOf(folder))[0].message).toContain('Rename it to season.yaml');
    mkdirSync(join(folder, 'season.yaml'));
    expect((await problemsOf(folder))[0].message).toContain('is not a file');
  });

  it('stops an alias that grows or holds itself', async () => {
    const rows = Array.from({ length: 9 }, (_, i) => `x${i}: &a${i + 1} [${`*a${i}, `.repeat(9)}]`);
    const bomb = `${LEAST}x: &a0 [a]\n${rows.join('\n')}\n`;
    const told = await problemsOf(seasonFolder({ 'season.yaml': bomb }));
    expect(told.map((one) => one.message)).toContainEqual(expect.stringContaining('200000 values'));
    const ring = await problemsOf(seasonFolder({ 'season.yaml': `${LEAST}fans: &f [*f]\n` }));
    expect(ring[0]).toMatchObject({ code: 'SEASON_YAML', line: 5, column: 11 });
  });
});

describe('a season.yaml with few keys', () => {
  it('fills in every default, and keeps ids as they are written', async () => {
    const season = await read(LEAST);
    expect(season).toMatchObject({
      title: '2024',
      startsMs: null,
      endsMs: null,
      showUnits: 'us',
      currency: 'USD',
      tariffs: [],
      prices: {},
      dryingAlternative: null,
      fans: [],
      files: [],
    });
    expect(season.bins[0]).toMatchObject({ id: '01', name: '01', goal: 'hold', air: 'up', openFloor: 1, cables: [] });
  });

  it('reads anchors, byte-order marks and Windows line ends, and leaves x- keys alone', async () => {
    const yaml = `\uFEFF${LEAST}fans:\n  - { id: F1, nameplate: &power 5 hp }\n  - { id: F2, nameplate: *power, x-bought: 1998 }\nx-note: [any, thing]\n`;
    const season = await read(yaml.replaceAll('\n', '\r\n'));
    expect(season.fans[1].nameplateW).toBe(season.fans[0].nameplateW);
  });

  it('reads the other spellings of rules', async () => {
    const rule = (when: string) => `{ price: 0.2 EUR/kWh, when: ${when} }`;
    const rules = [
      '{ months: 11-2, days: [sat, Sun] }',
      '{ months: [6, 7, 9], hours: [06:00-08:00, 17:00-24:00] }',
      '{ months: "6,7-8", days: fri-mon, hours: 18:00-00:00 }',
    ];
    const season = await read(
      `${LEAST}currency: EUR\ntariffs: [{ id: t, energy: [${rules.map(rule).join(', ')}, { price: 100 EUR/MWh }] }]\n`,
    );
    expect(season.tariffs[0].energy.map((one) => one.when)).toEqual([
      { months: new Set([11, 12, 1, 2]), days: new Set([6, 7]), hours: null },
      {
        months: new Set([6, 7, 9]),
        days: null,
        hours: [
          [360, 480],
          [1020, 1440],
        ],
      },
      { months: new Set([6, 7, 8]), days: new Set([5, 6, 7, 1]), hours: [[1080, 1440]] },
      null,
    ]);
    expect(season.tariffs[0].energy[3].pricePerKwh).toBeCloseTo(0.1, 12);
  });
});

describe('files', () => {
  const files = (list: string) => `${LEAST}files:\n${list}`;

  it('refuses a link that leads out of the folder, and takes one that stays', async () => {
    const outside = seasonFolder({ 'secret.csv': 'x\n' });
    const folder = seasonFolder({
      'season.yaml': files('  - { path: logs/*.csv, holds: weather }\n'),
      'logs/a.csv': 'x\n',
      'b.csv': 'x\n',
    });
    symlinkSync(join(folder, 'b.csv'), join(folder, 'logs/b.csv'));
    expect((await readSeason(folder)).files[0].paths).toEqual(['logs/a.csv', 'logs/b.csv']);
    symlinkSync(join(outside, 'secret.csv'), join(folder, 'logs/c.csv'));
    expect(await problemsOf(folder)).toMatchObject([{ code: 'SEASON_PATH', line: 6, column: 13 }]);
  });

  it('walks a ring of links once', async () => {
    const folder = seasonFolder({
      'season.yaml': files('  - { path: "**/*.csv", holds: weather }\n'),
      'logs/a.csv': 'x\n',
    });
    symlinkSync(folder, join(folder, 'logs/ring'));
    const problems = await problemsOf(folder);
    // The ring may show the file under a second name; then that is told, and it is never read twice.
    expect(problems.filter((one) => one.code !== 'SEASON_OVERLAP')).toEqual([]);
  });

  it('refuses a folder that is a link out', async () => {
    const outside = seasonFolder({ 'secret.csv': 'x\n' });
    const folder = seasonFolder({ 'season.yaml': files('  - { path: logs/*.csv, holds: weather }\n') });
    symlinkSync(outside, join(folder, 'logs'));
    for (const pattern of ['logs/*.csv', 'l*/*.csv', '**/*.csv', 'logs/secret.csv', 'logs']) {
      writeFileSync(join(folder, 'season.yaml'), files(`  - { path: "${pattern}", holds: weather }\n`));
      expect(await problemsOf(folder), pattern).toMatchObject([{ code: 'SEASON_PATH', line: 6, column: 13 }]);
    }
  });

  it('never takes in what the kit itself writes', async () => {
    const folder = seasonFolder({
      'season.yaml': files('  - { path: "**/*.csv", holds: weather }\n'),
      'logs/a.csv': 'x\n',
      // By review, year-end, notebook, load and sweep, and the kept season.
      'review/tables/t.csv': 'x\n',
      'year-end/tables/t.csv': 'x\n',
      'pages/t.csv': 'x\n',
      'loaded/rejects.csv': 'x\n',
      'sweep/t.csv': 'x\n',
      '.cache/t.csv': 'x\n',
    });
    expect((await readSeason(folder)).files[0].paths).toEqual(['logs/a.csv']);
  });

  it('takes a name with brackets in it as it stands', async () => {
    const folder = seasonFolder({
      'season.yaml': files('  - { path: "log (1) [a].csv", holds: weather }\n'),
      'log (1) [a].csv': 'x\n',
    });
    expect((await readSeason(folder)).files[0].paths).toEqual(['log (1) [a].csv']);
  });

  it('takes a unit from the header, from run_hours, or from the currency', async () => {
    const columns = (text: string) => `  - { path: a.csv, ${text} }\n`;
    for (const [text, code] of [
      ['holds: fan, fan: F1, columns: { time: t, current: "Amps (A)", run_hours: meter }', null],
      ['holds: fan, fan: F1, columns: { time: t, current: "Amps (degF)" }', 'SEASON_UNIT'],
      ['holds: fan, fan: F1, columns: { time: t, state: running }', null],
      ['holds: bills, columns: { from: a, to: b, tariff: c, amount: total }', null],
      [
        'holds: grain, shape: wide, columns: { time: t, temperature: { headers: "{bin} {cable} {sensor} [degC]" } }',
        null,
      ],
      [
        'holds: grain, shape: wide, columns: { time: t, temperature: { headers: "{cable} {sensor}", unit: degC } }',
        'SEASON_MISSING',
      ],
      ['holds: weather, time_format: epoch seconds', null],
    ] as const) {
      const yaml = `${files(columns(text))}fans: [{ id: F1, nameplate: 5 hp }]\n`;
      const problems = await problemsOf(seasonFolder({ 'season.yaml': yaml, 'a.csv': 'x\n' }));
      expect(
        problems.map((one) => one.code),
        text,
      ).toEqual(code === null ? [] : [code]);
    }
  });

  it('lets two entries share a file that both name, for different things', async () => {
    const shared = `  - { path: all.csv, holds: weather, columns: { time: t, temperature: { column: out, unit: degC } } }
  - { path: all.csv, holds: plenum, bin: 01, columns: { time: t, temperature: { column: pl, unit: degC } } }
`;
    const folder = seasonFolder({ 'season.yaml': files(shared), 'all.csv': 'x\n' });
    expect((await readSeason(folder)).files.map((file) => file.paths)).toEqual([['all.csv'], ['all.csv']]);
    writeFileSync(join(folder, 'season.yaml'), files('  - { path: all.csv, holds: weather }\n'.repeat(2)));
    expect(await problemsOf(folder)).toMatchObject([{ code: 'SEASON_OVERLAP', line: 7, column: 13 }]);
  });
});
