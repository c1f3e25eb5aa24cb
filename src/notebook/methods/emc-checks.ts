import { equilibriumMoistureWb } from '../../grain/equilibrium.ts';
import { ISOTHERM_FORMULA_IDS } from '../../grain/formulas.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { capital } from '../words.ts';
import { celsius } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { readReference } from './read-reference.ts';

/** A published equilibrium moisture: with its numbers for the chart. */
export interface EmcCheck extends PublishedCheck {
  crop: string;
  isotherm: string;
  tempC: number;
  /** fraction */
  rh: number;
}

/** Beyond the printed digit: the constants have five significant digits, worth 0.01 point. */
const CONSTANTS_POINT = 0.01;

/** The rows of tests/reference/emc.csv. */
export function emcChecks(): EmcCheck[] {
  return readReference('emc').map((row) => {
    const tempC = celsius(Number(row.temp_F));
    const rh = Number(row.rh_pct) / 100;
    const isotherm = isothermOf(row.crop, row.isotherm);
    return {
      domain: 'emc',
      group: `${capital(row.grain)}, ${row.isotherm}`,
      crop: row.crop,
      isotherm: row.isotherm,
      tempC,
      rh,
      formulaId: ISOTHERM_FORMULA_IDS[isotherm.equation],
      at: `${row.temp_F} °F, ${row.rh_pct} % humidity`,
      printed: row.published_emc_pct_wb,
      published: Number(row.published_emc_pct_wb),
      unit: '% wb',
      ours: 100 * equilibriumMoistureWb(isotherm, tempC, rh),
      tolerance: Number(row.half_width) + CONSTANTS_POINT,
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
