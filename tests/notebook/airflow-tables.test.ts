import { expect, it } from 'vitest';
import { airflowTable, binTable } from '../../src/notebook/airflow-tables.ts';
import type { Quantity } from '../../src/report/quantities.ts';
import { Units } from '../../src/report/units.ts';
import { exampleInput } from '../report/example-review.ts';

const { review } = exampleInput();
const [bin] = review.bins;
// By hand: 15 hp on 10,000 bushels of 1.2445 ft3. 1 hp is 550 ft lbf/s = 745.69987 W (NIST SP 811), 1 ft3 0.028316847 m3:
// 11,185.5 W over 352.403 m3 are 31.741 W/m3.
const bins = [{ ...bin, airflow: { ...bin.airflow, hpPerThousandBushels: 1.5 } }];
const shown = (system: 'us' | 'si') => {
  const units = new Units(system, 'USD', 'America/Chicago');
  return [binTable(bins, units), airflowTable(bins, units)].map(({ columns, rows }) => {
    const column = columns.find(({ key }) => key === 'hp');
    const cell = rows[0].hp as number;
    return [column === undefined ? null : units.unit(column.quantity as Quantity), cell, column?.known];
  });
};

it('tells the nameplate for the grain: hp per 1,000 bushels, or in a metric season by the same volume as the airflow beside it', () => {
  for (const told of shown('us')) expect(told).toEqual(['hp/1,000 bu', 1.5, 'stated']);
  for (const told of shown('si')) expect(told).toEqual(['W/m³', expect.closeTo(31.741, 3), 'stated']);
});

it('says why it is missing in both', () => {
  const none = [{ ...bin, airflow: { ...bin.airflow, hpPerThousandBushels: null } }];
  for (const system of ['us', 'si'] as const) {
    const { rows } = binTable(none, new Units(system, 'USD', 'America/Chicago'));
    expect(rows[0].hp).toEqual({ value: null, why: 'Nameplate or volume is not stated.' });
  }
});
