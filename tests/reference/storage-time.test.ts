import { describe, expect, it } from 'vitest';
import { storageRuleOf } from '../../src/grain/storage-rules.ts';
import { storageDays as days, storageChecks } from '../../src/notebook/methods/storage-checks.ts';
import { agrees, median, provenanceNote, type ReferenceRow, readReference } from './read-reference.ts';

const rows = readReference('storage_time');
const checks = storageChecks();
const tempC = (row: ReferenceRow) => (Number(row.temp_F) - 32) / 1.8;
const moistureWb = (row: ReferenceRow) => Number(row.moisture_pct_wb) / 100;
const published = (row: ReferenceRow) => Number(row.published_days);

// Tolerance: half of the printed digit, and 2 % for constants of three digits and the round 230 h that tables take for 0.5 % (0.498 %).
const title = (row: ReferenceRow) =>
  `${row.grain} ${row.temp_F} degF ${row.moisture_pct_wb} %: ${row.published_days} d${provenanceNote(row)}`;

describe('published storage times (tests/reference/storage_time.csv: Minnesota, Arkansas, Iowa State, Nebraska, NDSU; research abstracts; a handbook from memory)', () => {
  const fitting = rows.filter((row) => row.misfit === '');
  it('are all here', () => {
    expect(rows).toHaveLength(117);
  });
  for (const row of fitting) {
    it(`${title(row)} by ${row.crop}, ${row.rule}`, () => {
      expect(agrees(checks[rows.indexOf(row)])).toBe(true);
    });
  }
  it('of corn agree in the median within 2 % where the source uses the same form, misfits counted', () => {
    const corn = rows.filter((row) => row.grain === 'corn' && row.provenance === 'seen');
    expect(corn).toHaveLength(32);
    expect(median(corn.map((row) => Math.abs(days(row) / published(row) - 1)))).toBeLessThanOrEqual(0.02);
  });
  it('tell the two forms for cold corn apart: the other form misses the cells below 60 degF by a fifth and more', () => {
    for (const row of rows.filter(
      (one) => one.grain === 'corn' && one.provenance === 'seen' && Number(one.temp_F) <= 50,
    )) {
      const other = row.rule === 'carried-down form' ? 'low-temperature form' : 'carried-down form';
      const off = storageRuleOf('corn', other).hours(tempC(row), moistureWb(row)) / 24 / published(row);
      expect(Math.abs(off - 1)).toBeGreaterThan(0.18);
    }
  });
  it('NDSU’s soybean table is its cereal table moved 3 points, cell by cell where both are here', () => {
    const cells = new Map(
      rows
        .filter((row) => row.grain.startsWith('cereal'))
        .map((row) => [`${row.temp_F} ${row.moisture_pct_wb}`, published(row)]),
    );
    const pairs = rows
      .filter((row) => row.grain === 'soybean (NDSU)')
      .map((row) => [cells.get(`${row.temp_F} ${Number(row.moisture_pct_wb) + 3}`), published(row)])
      .filter(([cereal]) => cereal !== undefined);
    expect(pairs.length).toBeGreaterThanOrEqual(5);
    for (const [cereal, soybean] of pairs) expect(soybean).toBe(cereal);
  });
  // How far off: rounded tables from 0.4 to 1.4 of the equation; the measured soybeans kept 1.5 and 3.2 times as long; barley
  // that has to germinate from 0.38 of it.
  for (const row of rows.filter((one) => one.misfit !== '')) {
    it(`${title(row)} does not fit ${row.rule}: ${row.misfit}`, () => {
      expect(agrees(checks[rows.indexOf(row)])).toBe(false);
      const ratio = published(row) / days(row);
      expect(ratio).toBeGreaterThan(row.grain.startsWith('malting barley') ? 0.38 : 0.4);
      expect(ratio).toBeLessThan(row.grain === 'soybean (0.5% DML)' ? 3.3 : 1.4);
    });
  }
  it('of NDSU’s table for all cereals run an eighth shorter in the middle than the rule taken for cereals without their own', () => {
    const ratios = rows
      .filter((row) => row.grain.startsWith('cereal'))
      .map((row) => published(row) / (storageRuleOf('sorghum').hours(tempC(row), moistureWb(row)) / 24));
    expect(ratios).toHaveLength(36);
    expect(median(ratios)).toBeGreaterThan(0.85);
    expect(median(ratios)).toBeLessThan(0.9);
    expect(Math.min(...ratios)).toBeGreaterThan(0.47);
    expect(Math.max(...ratios)).toBeLessThan(2.1);
  });
});
