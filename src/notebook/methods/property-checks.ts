import { bulkPorosity, standardBulkDensityKgM3 } from '../../grain/bulk.ts';
import { bulkConductivityWMK } from '../../grain/conductivity.ts';
import { heatOfVaporisationJKg } from '../../grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../grain/specific-heat.ts';
import { capital } from '../words.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

const CAL_G_J_KG = 4186.8;

interface Case {
  formulaId: string;
  /** in the published unit */
  of(row: ReferenceRow, percent: number): number;
}

const CASES: Readonly<Record<string, Case | undefined>> = {
  'specific heat': {
    formulaId: 'specific-heat',
    // The published line that the row belongs to, on a dry basis.
    of: (row, percent) =>
      specificHeatJKgK(specificHeatLineOf(row.crop, 'Deshpande and Bal'), percent / (100 + percent)) / 1000,
  },
  conductivity: { formulaId: 'conductivity', of: (row, percent) => bulkConductivityWMK(row.crop, percent / 100) },
  porosity: {
    formulaId: 'porosity',
    of: (row) => 100 * bulkPorosity(row.crop, standardBulkDensityKgM3(row.crop)),
  },
  'heat of vaporisation': {
    formulaId: 'heat-of-vaporisation',
    // At the middle of the published 30 to 50 degC, by the crop's default isotherm.
    of: (row, percent) => heatOfVaporisationJKg(isothermOf(row.crop), 40, percent / (100 + percent)) / CAL_G_J_KG,
  },
  'bulk density': { formulaId: 'bulk-density', of: (row) => standardBulkDensityKgM3(row.crop) },
};

/** The rows of tests/reference/grain_properties.csv. One whose quantity is not known here has no answer; a test sees to it that such a row says why. */
export function propertyChecks(): PublishedCheck[] {
  return readReference('grain_properties').map((row) => {
    const known = CASES[row.quantity];
    return {
      domain: 'grain',
      group: capital(row.quantity),
      crop: row.crop,
      formulaId: known?.formulaId ?? '',
      at: `${row.crop}, ${row.inputs}`,
      printed: row.published,
      published: Number(row.published),
      unit: row.unit,
      ours: known?.of(row, Number.parseFloat(row.inputs)) ?? null,
      tolerance: toleranceOf(row.tolerance, row.published),
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
