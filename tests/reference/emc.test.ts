import { describe, expect, it } from 'vitest';
import { equilibriumHumidity, equilibriumMoistureWb } from '../../src/grain/equilibrium.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { median, provenanceNote, type ReferenceRow, readReference } from './read-reference.ts';

const rows = readReference('emc');
const tempC = (row: ReferenceRow) => (Number(row.temp_F) - 32) / 1.8;
const published = (row: ReferenceRow) => Number(row.published_emc_pct_wb);
const ours = (row: ReferenceRow) =>
  100 * equilibriumMoistureWb(isothermOf(row.crop, row.isotherm), tempC(row), Number(row.rh_pct) / 100);
const title = (row: ReferenceRow) =>
  `${row.grain} ${row.temp_F} degF ${row.rh_pct} %: ${row.published_emc_pct_wb}, ${row.isotherm}${provenanceNote(row)}`;

// The half digit of the printed value, and 0.01 point for the digits of the constants (five significant ones).
const tolerance = (row: ReferenceRow) => Number(row.half_width) + 0.01;

describe('published equilibrium moistures (tests/reference/emc.csv: an extension table, statements of NDSU, Kentucky, others)', () => {
  const fitting = rows.filter((row) => row.misfit === '');
  const table = fitting.filter((row) => row.source.includes('article grain table'));

  it('are all here', () => {
    expect(rows).toHaveLength(73);
    expect(table).toHaveLength(39);
  });
  for (const row of fitting) {
    it(`${title(row)} within the printed digit`, () => {
      expect(Math.abs(ours(row) - published(row))).toBeLessThanOrEqual(tolerance(row));
    });
  }
  it('agree in the median within 0.05 point where the source is one table of the D245.5 default isotherms', () => {
    expect(median(table.map((row) => Math.abs(ours(row) - published(row))))).toBeLessThanOrEqual(0.05);
  });
  it('come back as the humidity they were read at, within what their printed digit is worth', () => {
    for (const row of table) {
      const at = (moisture: number) =>
        equilibriumHumidity(isothermOf(row.crop, row.isotherm), tempC(row), moisture / 100);
      const rh = Number(row.rh_pct) / 100;
      expect(at(published(row) - tolerance(row))).toBeLessThanOrEqual(rh);
      expect(at(published(row) + tolerance(row))).toBeGreaterThanOrEqual(rh);
    }
  });
  // A row that starts to fit must lose its mark; editions for one grain lie up to about 2 points apart (barley, cold corn).
  for (const row of rows.filter((one) => one.misfit !== '')) {
    it(`${title(row)} does not fit: ${row.misfit}`, () => {
      const off = Math.abs(ours(row) - published(row));
      expect(off).toBeGreaterThan(tolerance(row));
      expect(off).toBeLessThan(2.2);
    });
  }
});
