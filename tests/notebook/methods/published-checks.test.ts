import { describe, expect, it } from 'vitest';
import { FORMULAS } from '../../../src/notebook/methods/formulas.ts';
import { agreementOf, agrees, misfitOf, type PublishedCheck } from '../../../src/notebook/methods/published-check.ts';
import { publishedChecks } from '../../../src/notebook/methods/published-checks.ts';
import { publishedRecord } from '../../../src/notebook/methods/published-record.ts';
import { type ReferenceName, readReference } from '../../../src/notebook/methods/read-reference.ts';

const checks = publishedChecks();
const check = (over: Partial<PublishedCheck>): PublishedCheck => ({ ...checks[0], misfit: '', ...over });

describe('the published record', () => {
  it('has a row for each of the files', () => {
    const files: ReferenceName[] = [
      'emc',
      'airflow',
      'fans',
      'cooling',
      'drying',
      'storage_time',
      'psychrometrics',
      'grain_properties',
      'money',
    ];
    expect(checks).toHaveLength(files.reduce((sum, name) => sum + readReference(name).length, 0));
  });

  it('reproduces every row that is not marked, and no marked one: a row that starts to fit has to lose its mark', () => {
    const wrong = checks.filter((one) => agrees(one) !== (one.misfit === ''));
    expect(wrong.map((one) => `${one.group}, ${one.at}: ${one.printed}, kit ${one.ours}`)).toEqual([]);
  });

  it('names formulas that exist where it has an answer', () => {
    const ids = new Set(FORMULAS.map((formula) => formula.id));
    for (const one of checks.filter((row) => row.ours !== null)) expect(ids, one.group).toContain(one.formulaId);
  });

  it('counts: two of four within, one marked, one without an answer; middle and largest of 0.1, 0.3 and 2', () => {
    const four = [
      check({ published: 10, ours: 10.1, tolerance: 0.5 }),
      check({ published: 10, ours: 9.7, tolerance: 0.5 }),
      check({ published: 10, ours: 12, tolerance: 0.5, misfit: 'another edition' }),
      check({ published: Number.NaN, printed: '>3000', ours: null, tolerance: 0 }),
    ];
    expect(four.map(misfitOf).map((off) => (off === null ? null : Math.round(off * 1e9) / 1e9))).toEqual([
      0.1,
      0.3,
      2,
      null,
    ]);
    const sum = agreementOf(four);
    expect(sum).toMatchObject({ rows: 4, answered: 3, agree: 2, marked: 1 });
    expect(sum.medianMisfit).toBeCloseTo(0.3, 9);
    expect(sum.worstMisfit).toBeCloseTo(2, 9);
  });

  it('says why when its files cannot be read, and leaves the page standing', () => {
    const record = publishedRecord(() => {
      throw new Error('no such file');
    });
    expect(record).toEqual({ checks: [], failure: 'no such file' });
  });
});
