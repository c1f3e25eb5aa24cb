import { afterAll, describe, expect, it } from 'vitest';
import { readSeason } from '../../../src/season/read-season.ts';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { placeOf, problemsOf, removeFolders, seasonFolder } from './season-folder.ts';

const withLine = (line: string) => EXAMPLE.replace('\nfiles:\n', () => `\n${line}\n\nfiles:\n`);
const read = (line: string) => readSeason(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': withLine(line) }));

afterAll(removeFolders);

describe('measures', () => {
  it('state what a change would cost once, for all bins or some', async () => {
    const stated =
      '[{ measure: fans-in-turns, price: "1,800 USD" }, { measure: other-rule, bins: [B1], price: 650 USD }]';
    expect((await read(`measures: ${stated}`)).measures).toEqual([
      { measure: 'fans-in-turns', binIds: null, price: 1800 },
      { measure: 'other-rule', binIds: ['B1'], price: 650 },
    ]);
    expect((await read('')).measures).toEqual([]);
  });

  it.each([
    ['measures: [{ measure: fans-in-turns, price: 1800 }]', 'SEASON_UNIT', '1800 }', 'measures[0].price'],
    ['measures: [{ measure: fans-in-turn, price: 9 USD }]', 'SEASON_CHOICE', 'fans-in-turn,', 'fans-in-turns'],
    ['measures: [{ measure: other-rule, bins: [B9], price: 9 USD }]', 'SEASON_REFERENCE', 'B9]', 'B9'],
    [
      'measures: [{ measure: other-rule, price: 9 USD }, { measure: other-rule, price: 7 USD }]',
      'SEASON_ID',
      'other-rule, price: 7',
      'has a price already',
    ],
    ['measures: [{ measure: other-rule, price: -9 USD }]', 'SEASON_RANGE', '-9 USD', 'measures[0].price'],
  ])('%s: %s at its place', async (line, code, at, message) => {
    const text = withLine(line);
    const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code, ...placeOf(text, at, 1) });
    expect(problems[0].message).toContain(message);
  });
});
