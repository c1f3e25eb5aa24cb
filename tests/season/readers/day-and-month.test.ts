import { describe, expect, it } from 'vitest';
import { otherWayRound } from '../../../src/season/readers/day-and-month.ts';
import { loadOf, problemsOf } from './load-of.ts';
import { fileOf } from './season-of.ts';

const HEAD = 'time,bin,temperature (degF),humidity (%)\n';
const file = (days: readonly string[]) => HEAD + days.map((day) => `${day} 13:00,B1,50,60\n`).join('');
const plenum = (timeFormat: string) => fileOf('plenum', 'p.csv', { timeFormat });
/** As the US writes the 10th to the 15th of October. */
const US = ['10/10/2024', '10/11/2024', '10/12/2024', '10/13/2024', '10/14/2024', '10/15/2024'];

describe('day and month the other way round than time_format says', () => {
  it('is a problem of the file: the rows that fit would be read as other days', async () => {
    // 10 October to 10 December by the stated format, three days that are no month: none of it is true.
    const [problem, ...more] = await problemsOf({ 'p.csv': file(US) }, [plenum('dd/MM/yyyy HH:mm')]);
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code: 'FILE_ROWS', file: 'p.csv', line: 5 });
    expect(problem.message).toBe(
      '3 of its 6 rows have a time that does not fit time_format dd/MM/yyyy HH:mm, first "10/13/2024 13:00", while all of its times fit MM/dd/yyyy HH:mm: day and month stand the other way round, and the rows that do fit would be read as other days. Set time_format: MM/dd/yyyy HH:mm.',
    );
  });

  it('is one too where a line of totals stands below, which is no time in either order', async () => {
    const days = Array.from({ length: 31 }, (_, i) => `10/${String(i + 1).padStart(2, '0')}/2024`);
    const [problem] = await problemsOf({ 'p.csv': `${file(days)}Total,B1,50,60\n` }, [plenum('dd/MM/yyyy HH:mm')]);
    expect(problem).toMatchObject({ code: 'FILE_ROWS', file: 'p.csv', line: 14 });
    expect(problem.message).toContain('19 of its 32 rows have a time that does not fit');
    expect(problem.message).toContain('while all of its times but 1 fit MM/dd/yyyy HH:mm: day and month');
  });

  it('is none where the format is right and a few rows are slips, or where neither order fits all', async () => {
    const slip = await loadOf({ 'p.csv': file([...US, ...US, '31/10/2024']) }, [plenum('MM/dd/yyyy HH:mm')]);
    expect(slip.tables.plenum.numRows).toBe(12);
    const mixed = await loadOf({ 'p.csv': file(['10/13/2024', '13/10/2024', '10/09/2024']) }, [
      plenum('MM/dd/yyyy HH:mm'),
    ]);
    expect(mixed.tables.plenum.numRows).toBe(2);
  });

  it.each([
    ['MM/dd/yyyy HH:mm', 'dd/MM/yyyy HH:mm'],
    ['d.M.yy H:mm:ss', 'M.d.yy H:mm:ss'],
    ["yyyy-MM-dd'T'HH:mm", "yyyy-dd-MM'T'HH:mm"],
    ['MM/dd/yyyy hh:mm a', 'dd/MM/yyyy hh:mm a'],
    ['d MMM yyyy', null],
    ['epoch seconds', null],
  ])('%s turned is %s', (format, turned) => {
    expect(otherWayRound(format)).toBe(turned);
  });
});
