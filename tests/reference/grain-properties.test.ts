import { describe, expect, it } from 'vitest';
import { propertyChecks } from '../../src/notebook/methods/property-checks.ts';
import { agrees, offBy, provenanceNote, readReference } from './read-reference.ts';

describe('published properties of grain (tests/reference/grain_properties.csv)', () => {
  const rows = readReference('grain_properties');
  for (const [i, check] of propertyChecks().entries()) {
    const { tolerance, tolerance_reason: reason } = rows[i];
    const name = `${check.group} of ${check.at}: ${check.printed} ${check.unit}${provenanceNote(check)}`;
    if (check.misfit === '') {
      it(`${name} within ${tolerance || 'its printed digit'}${reason ? `: ${reason}` : ''}`, () => {
        expect(agrees(check)).toBe(true);
      });
    } else {
      it(`${name} does not fit: ${check.misfit}`, () => {
        expect(agrees(check)).toBe(false);
        expect(offBy(check)).toBeLessThan(0.3 * check.published);
      });
    }
  }
});
