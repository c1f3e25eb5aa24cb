import { describe, expect, it } from 'vitest';
import { bulkPorosity, standardBulkDensityKgM3 } from '../../src/grain/bulk.ts';
import { bulkConductivityWMK } from '../../src/grain/conductivity.ts';
import { heatOfVaporisationJKg } from '../../src/grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../src/grain/specific-heat.ts';
import { provenanceNote, type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

const CAL_G_J_KG = 4186.8;

function ours({ quantity, crop, inputs }: ReferenceRow): number {
  const percent = Number.parseFloat(inputs);
  switch (quantity) {
    case 'specific heat':
      return specificHeatJKgK(specificHeatLineOf(crop, 'Deshpande and Bal'), percent / (100 + percent)) / 1000;
    case 'conductivity':
      return bulkConductivityWMK(crop, percent / 100);
    case 'porosity':
      return 100 * bulkPorosity(crop, standardBulkDensityKgM3(crop));
    case 'bulk density':
      return standardBulkDensityKgM3(crop);
    case 'heat of vaporisation':
      return heatOfVaporisationJKg(isothermOf(crop), 40, percent / (100 + percent)) / CAL_G_J_KG;
    default:
      return expect.fail(`no quantity ${quantity}`);
  }
}

describe('published properties of grain (tests/reference/grain_properties.csv)', () => {
  for (const row of readReference('grain_properties')) {
    const off = () => Math.abs(ours(row) - Number(row.published));
    const tolerance = toleranceOf(row.tolerance, row.published);
    const name = `${row.quantity} of ${row.crop}, ${row.inputs}: ${row.published} ${row.unit}${provenanceNote(row)}`;
    if (row.misfit === '') {
      it(`${name} within ${row.tolerance || 'its printed digit'}${row.tolerance_reason ? `: ${row.tolerance_reason}` : ''}`, () => {
        expect(off()).toBeLessThanOrEqual(tolerance);
      });
    } else {
      it(`${name} does not fit: ${row.misfit}`, () => {
        expect(off()).toBeGreaterThan(tolerance);
        expect(off()).toBeLessThan(0.3 * Number(row.published));
      });
    }
  }
});
