import { describe, expect, it } from 'vitest';
import { loadOf, rowsOf } from './load-of.ts';
import { fileOf } from './season-of.ts';

const HEAD = 'time,temperature (degF),humidity (%),note\n';
const [FIRST, LAST] = ['2024-10-04 12:00,59,72,\n', '2024-10-04 13:00,60.1,69.3,fog\n'];
const read = (text: string) => loadOf({ 'w.csv': text }, [fileOf('weather', 'w.csv')]);
const temps = async (text: string) => rowsOf((await read(text)).tables.weather).map((row) => Number(row.temp_c));

describe('a log that broke off within its last line', () => {
  it('loses that line, which is told, and no half of a number is taken for one', async () => {
    for (let end = 1; end <= LAST.lastIndexOf(','); end++) {
      const { tables, load } = await read(HEAD + FIRST + LAST.slice(0, end));
      expect(tables.weather.numRows).toBe(1);
      expect(load.rejects).toMatchObject([{ line: 3, column: null }]);
    }
    const { load } = await read(HEAD + FIRST + LAST.slice(0, 24));
    expect(load.rejects[0].reason).toBe('is the last and is cut off: it has 3 of 4 fields and no end of line');
  });

  it('keeps a last line that is whole, or that ends, though it leaves fields out', async () => {
    expect(await temps(HEAD + FIRST + LAST.trimEnd())).toHaveLength(2);
    expect(await temps(`${HEAD}${FIRST}2024-10-04 13:00,60.1,69.3\n`)).toHaveLength(2);
    expect(await temps(`${HEAD}2024-10-04 12:00,59,72\n${LAST}`)).toHaveLength(2);
  });
});
