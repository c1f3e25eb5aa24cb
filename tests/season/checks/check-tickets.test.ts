import { describe, expect, it } from 'vitest';
import { ticketsOf } from '../../../src/analysis/moisture/tickets.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { rowsOf } from '../readers/load-of.ts';
import { fileOf, folderOf, seasonOf } from '../readers/season-of.ts';

/** With the kit's own checks; the site keeps Chicago time. */
async function checked(lines: string[]) {
  const csv = ['time,bin,direction,net (kg),moisture (%)', ...lines].join('\n');
  const { folder, remove } = folderOf({ 't.csv': csv });
  try {
    const { tables, load } = await loadSeason(seasonOf(folder, [fileOf('tickets', 't.csv')]));
    const told = load.findings.filter((one) => one.where.endsWith('scale tickets'));
    return { tables, load, told, flags: rowsOf(tables.tickets).map((row) => row.flags) };
  } finally {
    remove();
  }
}

describe('scale tickets', () => {
  it('that cannot be stay in their table, flagged and told', async () => {
    const { tables, load, told, flags } = await checked([
      '2024-10-01 08:00,B1,in,14000,17',
      '2024-10-01 09:00,B1,in,-4000,17',
      '2024-10-01 10:00,B1,in,0,17',
      '2024-10-01 11:00,B1,in,120000,17',
      '2024-10-01 12:00,B1,in,120001,17',
      '2024-10-01 13:00,B1,in,14000,3.9',
      '2024-10-01 14:00,B1,in,14000,50.1',
      '2024-10-01 15:00,B1,in,14000,',
      '2024-10-01 16:00,B2,out,-1,',
    ]);
    expect(flags).toEqual([0, 2, 2, 0, 2, 2, 2, 0, 2]);
    expect(told.map((one) => [one.kind, one.binId, one.cells])).toEqual([
      ['spike', 'B1', 6],
      ['spike', 'B1', 4],
      ['spike', 'B2', 1],
    ]);
    expect(told[0].text).toContain('3 scale tickets of B1 cannot be: a net weight of -4000 kg, 0 kg, 120001 kg');
    expect(told[1].text).toContain('2 scale tickets of B1 cannot be: a moisture of 3.9 %, 50.1 %');
    expect(told.every((one) => one.advice !== null)).toBe(true);
    expect(load.totals.flagged.spike).toBe(11);
    // Nine rows of two cells; two bear no moisture.
    expect(load.files[0]).toMatchObject({ rows: 9, cells: 18, kept: 16, missing: 2, rejected: 0, outside: 0 });
    // The analysis knows that the load went, and uses nothing of it that cannot be.
    const loads = ticketsOf(tables.tickets, 'B1').map((one) => [one.netKg, one.moistureWb]);
    const no = Number.NaN;
    expect(loads).toEqual([
      [14000, 0.17],
      [no, no],
      [no, no],
      [120000, 0.17],
      [no, no],
      [14000, no],
      [14000, no],
      [14000, no],
    ]);
  });

  it('twice at one time of day: the first counts; another weight, way, bin or time is a load of its own', async () => {
    const { tables, told, flags } = await checked([
      '2024-10-01 08:00,B1,in,14000,17',
      '2024-10-01 08:00,B1,in,14000,17',
      '2024-10-01 08:00,B1,in,14001,17',
      '2024-10-01 08:00,B1,out,14000,17',
      '2024-10-01 08:00,B2,in,14000,17',
      '2024-10-01 08:01,B1,in,14000,17',
      '2024-10-01 08:00,B1,in,14000,17.1',
    ]);
    expect(flags).toEqual([0, 8, 0, 0, 0, 0, 0]);
    expect(told.map((one) => [one.kind, one.binId, one.cells])).toEqual([['duplicate', 'B1', 2]]);
    expect(ticketsOf(tables.tickets, 'B1')).toHaveLength(5);
  });

  it('twice, one of the rows without its moisture: the one that has it counts, whichever comes first, out as in', async () => {
    const { tables, told, flags } = await checked([
      '2024-10-01 08:00,B1,in,14000,17',
      '2024-10-01 08:00,B1,in,14000,',
      '2025-03-01 08:00,B1,out,14000,',
      '2025-03-01 08:00,B1,out,14000,15',
      '2025-03-01 09:00,B1,out,14000,15',
      '2025-03-01 09:00,B1,out,14000,15.1',
    ]);
    expect(flags).toEqual([0, 8, 8, 0, 0, 0]);
    expect(told.map((one) => [one.kind, one.cells])).toEqual([['duplicate', 2]]);
    expect(told[0].text).toContain('2 scale tickets of B1 repeat another in time, direction, weight and moisture');
    expect(ticketsOf(tables.tickets, 'B1').map((one) => one.moistureWb)).toEqual([0.17, 0.15, 0.15, 0.151]);
  });

  it('alike by a date alone are told and kept, for they may be two loads of the day', async () => {
    const { tables, load, told, flags } = await checked(['2024-10-01,B1,in,14000,17', '2024-10-01,B1,in,14000,17']);
    expect(flags).toEqual([0, 0]);
    expect(told.map((one) => [one.kind, one.cells])).toEqual([['duplicate', 0]]);
    expect(told[0].text).toContain('a date alone does not tell');
    expect(load.totals.flagged.duplicate).toBe(0);
    expect(ticketsOf(tables.tickets, 'B1')).toHaveLength(2);
  });

  it('in good standing are not told', async () => {
    const { told } = await checked(['2024-10-01 08:00,B1,in,25550,17', '2024-10-01 09:00,B1,in,25550,17']);
    expect(told).toEqual([]);
  });
});
