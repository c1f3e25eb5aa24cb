import { describe, expect, it } from 'vitest';
import { rejectLines, tablesOf } from '../../scripts/review/run-review.ts';
import { workbookBytes } from '../../scripts/review/workbook-bytes.ts';
import type { Page } from '../../src/report/page.ts';
import type { TableFile } from '../../src/report/page-tables.ts';
import { Units } from '../../src/report/units.ts';
import type { FileLoad, LoadReport, Reject } from '../../src/season/loaded.ts';

describe('the tables of a page', () => {
  const page = (value: number) =>
    ({
      id: 'costs',
      units: new Units('us', 'USD', 'America/Chicago'),
      sections: [
        {
          id: 'all',
          title: 'All',
          lead: '',
          table: { id: 'bins', columns: [{ key: 'h', label: 'Hours', quantity: 'hours' }], rows: [{ h: value }] },
        },
      ],
    }) as unknown as Page;

  it('are told as failed where they cannot be written, and throw nothing', () => {
    expect(tablesOf(page(1000))).toMatchObject({ files: [{ name: 'costs-all-bins' }], failures: [] });
    const { files, failures } = tablesOf(page(Number.POSITIVE_INFINITY));
    expect(files).toEqual([]);
    expect(failures).toEqual([expect.stringMatching(/^tables\/costs-\*\.csv: .*finite/)]);
  });
});

describe('the workbook', () => {
  it('is left out where nobody asks, and told as failed where it cannot be written', async () => {
    expect(await workbookBytes([], 'Harvest 2024', undefined)).toEqual({ bytes: null, failures: [] });
    const broken = [{ name: 'costs-all-bins' }] as TableFile[];
    const { bytes, failures } = await workbookBytes(broken, 'Harvest 2024', true);
    expect(bytes).toBeNull();
    expect(failures).toEqual([expect.stringMatching(/^season\.xlsx: \w/)]);
  });
});

describe('what the terminal says of rejected cells', () => {
  const reject = (reason: string): Reject => ({ file: 'logs/a.csv', line: 2, column: null, text: '', reason });
  it('is a line a file, with the reason that stands most often', () => {
    const file = { path: 'logs/a.csv', cells: 12, rejected: 6 } as FileLoad;
    const load = {
      files: [file, { ...file, path: 'logs/b.csv', rejected: 0 }],
      rejects: [reject('is no number'), reject('names the cable "C2", which bin B1 does not have')],
    } as LoadReport;
    // Two cables, one reason.
    load.rejects.push(reject('names the cable "C3", which bin B2 does not have'));
    expect(rejectLines(load)).toEqual([
      '         logs/a.csv: 6 of 12 cells rejected, most often: names the cable "C2", which bin B1 does not have (rejects.csv)',
    ]);
  });
});
