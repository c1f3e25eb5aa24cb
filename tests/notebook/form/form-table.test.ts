import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { amount } from '../../../src/notebook/form/amount.ts';
import { formTable } from '../../../src/notebook/form/form-table.ts';
import { headingOf, namedUnit, shownColumn } from '../../../src/notebook/form/named-units.ts';
import { aq } from '../../../src/notebook.ts';
import { Units } from '../../../src/report/units.ts';
import { TABLES } from '../../../src/tables/columns.ts';

const us = new Units('us', 'USD', 'America/Chicago');
const tableOf = (rows: Parameters<typeof formTable>[0], spec: Parameters<typeof formTable>[1] = {}) =>
  formTable(rows, spec, 'Section', us);

describe('a table of rows', () => {
  it('takes labels and kinds from the names of columns, numbers into SI', () => {
    const { table } = tableOf([
      { bin: 'B1', mean_temp_f: 50, moisture_pct: 15, rh_pct: 60, depth_ft: 10, fanHours: 3, n: 2 },
    ]);
    expect(table.columns.map(({ label, quantity }) => [label, quantity])).toEqual([
      ['Bin', null],
      ['Mean temperature', 'temperature'],
      ['Moisture', 'moisture'],
      ['Relative humidity', 'share'],
      ['Depth', 'length'],
      ['Fan hours', 'count'],
      ['N', 'count'],
    ]);
    const [row] = table.rows;
    expect(row.mean_temp_f).toBeCloseTo(10, 12);
    expect(row.moisture_pct).toBeCloseTo(0.15, 12);
    expect(row.rh_pct).toBeCloseTo(0.6, 12);
    expect(row.depth_ft).toBeCloseTo(3.048, 12);
  });

  it('takes kinds from the numbers themselves, and says those of several kinds in words', () => {
    const cost = amount('money', estimate(10, 8, 12));
    const { table } = tableOf([
      { cost, mixed: amount('hours', 3), day: '2024-11-03', month: '2024-11', at: new Date(0), yes: true },
      {
        cost: amount('money', withheld('No price.')),
        mixed: amount('money', 2),
        day: null,
        month: '2024-12',
        at: new Date(1),
        yes: false,
      },
    ]);
    expect(table.columns.map(({ quantity }) => quantity)).toEqual(['money', null, 'day', 'month', 'moment', null]);
    expect(table.rows.map(({ cost: cell }) => cell)).toEqual([estimate(10, 8, 12), withheld('No price.')]);
    expect(table.rows.map(({ mixed }) => mixed)).toEqual(['3.0 h', '2.00 USD']);
    // Local midnight of 3 November in Chicago, still daylight time: 5:00 UTC.
    expect(table.rows[0].day).toBe(Date.UTC(2024, 10, 3, 5));
    expect(table.rows[1].day).toEqual({ value: null, why: 'Not known.' });
    expect(table.rows.map(({ yes }) => yes)).toEqual(['yes', 'no']);
  });

  it('takes arquero tables as they are ordered and filtered; the library sorts what is missing first', () => {
    const from = aq
      .table({ a: [3, 1, 2, null] })
      .orderby('a')
      .filter((d: { a: number }) => d.a !== 3);
    expect(tableOf(from).table.rows.map(({ a }) => a)).toEqual([{ value: null, why: 'Not known.' }, 1, 2]);
  });

  it('cuts what is too long and counts it, folds what is long', () => {
    const rows = Array.from({ length: 500 }, (_, i) => ({ i }));
    expect(tableOf(rows)).toMatchObject({ cut: 100, table: { folded: true } });
    expect(tableOf(rows, { most: 10 })).toMatchObject({ cut: 490, table: { folded: false } });
    expect(tableOf([])).toMatchObject({ cut: 0, table: { empty: 'There are no rows.', rows: [] } });
  });

  it('tells which column is wrong, and what there is', () => {
    expect(() => tableOf([{ a: 1, b: 2 }], { columns: { c: 'C' } })).toThrow(
      'there is no column c; the rows have a, b',
    );
    expect(() => tableOf([{ a: estimate(1, 0, 2) }])).toThrow(
      "column a: estimates need their kind, e.g. { of: 'money' }",
    );
    expect(() => tableOf([{ a: { deep: 1 } }])).toThrow(
      'column a: a table cannot show {"deep":1}; name the columns to show',
    );
    expect(() => tableOf([{ a: 'x' }], { columns: { a: { of: 'hours' } } })).toThrow(
      'column a is of hours; "x" is no number',
    );
    expect(() => tableOf(3 as never)).toThrow(
      'rows are a list of objects, an arquero table or a data frame; given is number',
    );
  });
});

describe('names of columns with their unit', () => {
  it('come back from every stored column as the unit that it is shown in', () => {
    // Whatever a reader's column is called, the page must know what it is of, and arrive at the stored value again.
    for (const system of ['us', 'si'] as const) {
      for (const defs of Object.values(TABLES)) {
        for (const { name, type, unit } of defs) {
          if (type !== 'number' || name === 'on' || name === 'pressure_pa' || name === 'amount') continue;
          const { name: shown, shown: show } = shownColumn(name, unit, system);
          const named = namedUnit(shown);
          expect(named, `${name} as ${shown}`).not.toBe(null);
          if (named === null || name === 'run_s' || unit === 'J' || unit === 'W') continue;
          expect(amount(named.of, show(0.25), named.unit).amount, `${name} as ${shown}`).toBeCloseTo(0.25, 9);
        }
      }
    }
  });

  it('are spelled as headings', () => {
    expect(['temp_f', 'max_moisture_pct', 'costPerPoint', 'hour', 'fan_h'].map(headingOf)).toEqual([
      'Temperature',
      'Max moisture',
      'Cost per point',
      'Hour',
      'Fan',
    ]);
  });
});
