import { afterAll, describe, expect, it } from 'vitest';
import { readSeason } from '../../../src/season/read-season.ts';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { placeOf, problemsOf, removeFolders, seasonFolder } from './season-folder.ts';

const withLine = (line: string) => EXAMPLE.replace('\nfiles:\n', () => `\n${line}\n\nfiles:\n`);
const read = (line: string) => readSeason(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': withLine(line) }));

afterAll(removeFolders);

describe('useful_hours', () => {
  it('is a distance in points and one in degrees; 1.8 degF are 1 K, a difference has no offset', async () => {
    const { usefulHours } = await read('useful_hours: { moisture: 0.8 %, temperature: 1.8 degF }');
    expect(usefulHours?.moistureWb).toBeCloseTo(0.008, 12);
    expect(usefulHours?.temperatureK).toBeCloseTo(1, 12);
  });

  it('may be left out, whole or in part', async () => {
    expect((await read('')).usefulHours).toEqual({ moistureWb: null, temperatureK: null });
    expect((await read('useful_hours: { moisture: 1 % }')).usefulHours?.temperatureK).toBeNull();
  });

  it.each([
    ['useful_hours: { moisture: 0.5 }', 'SEASON_UNIT', '0.5 }', 'useful_hours.moisture'],
    ['useful_hours: { moisture: 0 % }', 'SEASON_RANGE', '0 % }\n\nfiles', 'above 0 %'],
    ['useful_hours: { temperature: 40 degF }', 'SEASON_RANGE', '40 degF }', '18 degF'],
    ['useful_hours: { temprature: 2 degF }', 'SEASON_KEY', 'temprature', 'Did you mean "temperature"?'],
  ])('%s: %s at its place', async (line, code, at, message) => {
    const text = withLine(line);
    const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code, ...placeOf(text, at, 1) });
    expect(problems[0].message).toContain(message);
  });
});
