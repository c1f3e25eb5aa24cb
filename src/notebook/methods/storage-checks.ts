import { cornStorageHours } from '../../grain/corn-storage.ts';
import { storageRuleOf } from '../../grain/storage-rules.ts';
import { capital } from '../words.ts';
import { celsius } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { halfDigit, type ReferenceRow, readReference } from './read-reference.ts';

const tempC = (row: ReferenceRow) => celsius(Number(row.temp_F));
const wetBasis = (row: ReferenceRow) => Number(row.moisture_pct_wb) / 100;

/** Days by a rule, by default the row's own. */
export function storageDays(row: ReferenceRow, rule: string = row.rule): number {
  if (row.damage_pct === '') return storageRuleOf(row.crop, rule).hours(tempC(row), wetBasis(row)) / 24;
  return cornStorageHours(tempC(row), wetBasis(row), { damageFraction: Number(row.damage_pct) / 100 }) / 24;
}

function formulaIdOf(row: ReferenceRow): string {
  if (!row.rule.startsWith('germination')) return 'corn-storage';
  if (row.crop === 'canola' || row.crop === 'rapeseed') return 'canola-storage';
  return Number(row.moisture_pct_wb) > 19 ? 'wheat-storage-damp' : 'wheat-storage';
}

/** The rows of tests/reference/storage_time.csv. */
export function storageChecks(): PublishedCheck[] {
  return readReference('storage_time').map((row) => {
    const published = Number(row.published_days);
    const damage = row.damage_pct === '' ? '' : `, ${row.damage_pct} % damaged`;
    return {
      domain: 'storage',
      group: row.rule === '' ? row.grain : `${capital(row.grain)}, ${row.rule}`,
      crop: row.crop,
      formulaId: formulaIdOf(row),
      at: `${row.temp_F} °F, ${row.moisture_pct_wb} %${damage}`,
      printed: row.published_days,
      published,
      unit: 'days',
      ours: row.rule === '' ? null : storageDays(row),
      // Half of the printed digit, and 2 % for constants of three digits and the round 230 h that tables take for 0.5 % (0.498 %).
      tolerance: (row.tolerance === '' ? halfDigit(row.published_days) : Number(row.tolerance)) + 0.02 * published,
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
