import { describe, expect, it } from 'vitest';
import { equilibriumHumidity } from '../../src/grain/equilibrium.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { type EmcCheck, emcChecks } from '../../src/notebook/methods/emc-checks.ts';
import { agrees, median, offBy as off, provenanceNote } from './read-reference.ts';

// Tolerance: the half digit of the printed value, and 0.01 point for the digits of the constants (five significant ones).
const rows = emcChecks();
const title = (row: EmcCheck) => `${row.group}, ${row.at}: ${row.printed}${provenanceNote(row)}`;

describe('published equilibrium moistures (tests/reference/emc.csv: an extension table, statements of NDSU, Kentucky, others)', () => {
  const fitting = rows.filter((row) => row.misfit === '');
  const table = fitting.filter((row) => row.source.includes('article grain table'));

  it('are all here', () => {
    expect(rows).toHaveLength(78);
    expect(table).toHaveLength(39);
  });
  for (const row of fitting) {
    it(`${title(row)} within the printed digit`, () => {
      expect(agrees(row)).toBe(true);
    });
  }
  it('agree in the median within 0.05 point where the source is one table of the D245.5 default isotherms', () => {
    expect(median(table.map(off))).toBeLessThanOrEqual(0.05);
  });
  // Statements without an equation stand under the edition that they come from; the wider ones are printed to half a point.
  it('agree in the median within 0.1 point by each isotherm that a source used', () => {
    const isotherms = new Set(fitting.map((row) => `${row.crop} ${row.isotherm}`));
    expect(isotherms.size).toBeGreaterThan(8);
    for (const isotherm of isotherms) {
      const own = fitting.filter((row) => `${row.crop} ${row.isotherm}` === isotherm);
      expect(median(own.map(off)), isotherm).toBeLessThanOrEqual(0.1);
    }
  });
  it('come back as the humidity they were read at, within what their printed digit is worth', () => {
    for (const row of table) {
      const at = (moisture: number) =>
        equilibriumHumidity(isothermOf(row.crop, row.isotherm), row.tempC, moisture / 100);
      expect(at(row.published - row.tolerance)).toBeLessThanOrEqual(row.rh);
      expect(at(row.published + row.tolerance)).toBeGreaterThanOrEqual(row.rh);
    }
  });
  // A row that starts to fit must lose its mark; editions for one grain lie up to about 2 points apart (barley, cold corn).
  for (const row of rows.filter((one) => one.misfit !== '')) {
    it(`${title(row)} does not fit: ${row.misfit}`, () => {
      expect(agrees(row)).toBe(false);
      expect(off(row)).toBeLessThan(2.2);
    });
  }
});
