import { describe, expect, it } from 'vitest';
import { numbers } from '../../../src/tables/arrow.ts';
import { loadOf } from './load-of.ts';
import { fileOf } from './season-of.ts';

const ends = async (rows: string) => {
  const csv = `from,to,tariff,energy (kWh)\n${rows}`;
  const loaded = await loadOf({ 'b.csv': csv }, [fileOf('bills', 'b.csv')]);
  return [...numbers(loaded.tables.bills, 'to')].map((ms) => new Date(ms).toISOString());
};

// Local midnight in Chicago is 05:00 UTC in daylight time.
describe('the end of a bill', () => {
  it('is its last day where bills say the last day', async () => {
    expect(await ends('2024-10-01,2024-10-10,T1,5\n2024-10-11,2024-10-20,T1,6\n')).toEqual([
      '2024-10-11T05:00:00.000Z',
      '2024-10-21T05:00:00.000Z',
    ]);
  });
  it('is the day on which the next begins where bills say that', async () => {
    expect(await ends('2024-10-01,2024-10-11,T1,5\n2024-10-11,2024-10-21,T1,6\n')).toEqual([
      '2024-10-11T05:00:00.000Z',
      '2024-10-21T05:00:00.000Z',
    ]);
  });
  it('that lies before its beginning: the row stands in rejects.csv as it stood in the file', async () => {
    const csv = 'from,to,tariff,energy (kWh)\n2024-10-01,2024-10-10,T1,5\n"2024-12-01", 2024-11-01,T1,1\n';
    const { load } = await loadOf({ 'b.csv': csv }, [fileOf('bills', 'b.csv')]);
    expect(load.rejects).toMatchObject([{ line: 3, text: '"2024-12-01", 2024-11-01,T1,1' }]);
    expect(load.findings).toMatchObject([{ text: 'b.csv: 1 value could not be read (1 whole row).' }]);
  });
});
