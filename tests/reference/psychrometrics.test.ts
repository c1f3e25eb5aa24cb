import { describe, expect, it } from 'vitest';
import { airChecks } from '../../src/notebook/methods/air-checks.ts';
import { agrees, provenanceNote, readReference } from './read-reference.ts';

// Rows of the collection that carry no published value (farm-air states worked out by its collector) are not copied:
// they would hold one implementation against another. psychrolib does that in tests/air.
describe('published air properties (tests/reference/psychrometrics.csv: ASHRAE Fundamentals 2017 ch. 1 tables 1-3, example 1, NDSU)', () => {
  const rows = readReference('psychrometrics');
  it('are all here', () => {
    expect(rows).toHaveLength(31);
  });
  for (const [i, check] of airChecks().entries()) {
    const { tolerance, tolerance_reason: reason } = rows[i];
    const name = `${check.group}, ${check.at}: ${check.printed} ${check.unit}${provenanceNote(check)}`;
    if (check.misfit === '') {
      it(`${name} within ${tolerance || 'its printed digit'}${reason ? `: ${reason}` : ''}`, () => {
        expect(agrees(check)).toBe(true);
      });
    } else {
      it(`${name} does not fit: ${check.misfit}`, () => {
        expect(agrees(check)).toBe(false);
        const more = (check.ours ?? Number.NaN) / check.published - 1;
        expect(more).toBeGreaterThan(0);
        expect(more).toBeLessThan(0.3);
      });
    }
  }
});
