import { bedPressurePa } from '../../bin/airflow-resistance.ts';
import { airPowerW, fanWarmingByPressureK, hpPerThousandBushels } from '../../bin/fan-power.ts';
import { resistanceCurveOf } from '../../bin/resistance-curves.ts';
import { PACKING_FACTOR } from '../../bin/resistance-factors.ts';
import { velocityOfCfmPerBushel } from '../../bin/specific-airflow.ts';
import { capital } from '../words.ts';
import { BTU_LB_F_J_KGK, CFM_M3S, FT_M, IN_WATER_PA } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

// Air and units of the published formula: 0.075 lb/ft3, 0.24 Btu/(lb degF).
const DENSITY_KG_M3 = 0.075 * 16.018463;
const HEAT_J_KGK = 0.24 * BTU_LB_F_J_KGK;
/** The rule takes an inch of water at 68 degF, 5.192 lb/ft2, 0.2 % lighter than the conventional inch. */
const RULE_INCH_PA = 5.192 * 47.880259;

/** Shaft power for packed corn at 1 cfm/bu, hp per 1000 bu. */
export function cornHp(depthFt: number, efficiency: number): number {
  const velocity = velocityOfCfmPerBushel(1, depthFt * FT_M);
  const pressure = bedPressurePa(resistanceCurveOf('corn'), velocity, depthFt * FT_M, PACKING_FACTOR);
  return hpPerThousandBushels(airPowerW(pressure, 1000 * CFM_M3S) / efficiency, 1000);
}

function warmingF(inches: number, efficiency: number): number {
  return 1.8 * fanWarmingByPressureK(inches * IN_WATER_PA, efficiency, DENSITY_KG_M3, HEAT_J_KGK);
}

type Numbers = Pick<PublishedCheck, 'formulaId' | 'printed' | 'published' | 'ours' | 'tolerance'> & { crop?: string };

/** Each row states its case in words; what they mean in numbers stands here, by the row's id. */
const CASES: Readonly<Record<string, (row: ReferenceRow) => Numbers>> = {
  'fanheat-formula': (row) => warming(row, warmingF(1, 1)),
  'fanheat-formula-50': (row) => warming(row, warmingF(5, 0.5)),
  'hp-per-1000': (row) => ({ ...rangeOf(row, 0), formulaId: 'fan-power', crop: 'corn', ours: cornHp(18, 0.55) }),
  // 1 cfm/bu through 20 ft of corn takes about the 3.8 inches that the source has in mind.
  'isu-cfm-hp': (row) => ({
    formulaId: 'fan-power',
    crop: 'corn',
    printed: row.expected,
    published: Number(row.expected),
    ours: 1000 / cornHp(20, 0.6),
    tolerance: toleranceOf(row.tolerance, row.expected),
  }),
  // Printed to the degree; a fan of 50 % is taken.
  'fanheat-nd10': (row) => ({ ...rangeOf(row, 0.5), formulaId: 'fan-warming', ours: warmingF(5, 0.5) }),
  'fanheat-nd09': (row) => ({ ...rangeOf(row, 0.5), formulaId: 'fan-warming', ours: warmingF(6.5, 0.5) }),
  airhp: () => ({
    formulaId: 'fan-power',
    printed: '10,000 × 3 / 6356',
    published: (10_000 * 3) / 6356,
    ours: hpPerThousandBushels(airPowerW(3 * RULE_INCH_PA, 10_000 * CFM_M3S), 1000),
    // 6356 has four digits.
    tolerance: (10_000 * 3) / 6356 / 6356,
  }),
};

/** A range that is stated for a case, held against the kit's number in the middle of that case. */
function rangeOf(row: ReferenceRow, extra: number): Pick<Numbers, 'printed' | 'published' | 'tolerance'> {
  const [least, most] = row.expected.split('-').map(Number);
  return { printed: row.expected, published: (least + most) / 2, tolerance: (most - least) / 2 + extra };
}

function warming(row: ReferenceRow, ours: number): Numbers {
  const published = Number(row.expected);
  return { formulaId: 'fan-warming', printed: row.expected, published, ours, tolerance: Number(row.tolerance) };
}

/** The rows of tests/reference/fans.csv. One whose case is not known here has no answer; a test sees to it that such a row says why. */
export function fanChecks(): PublishedCheck[] {
  return readReference('fans').map((row) => {
    const numbers = CASES[row.id]?.(row) ?? unanswered(row);
    return {
      crop: null,
      ...numbers,
      domain: 'airflow',
      group: capital(row.quantity),
      at: row.inputs,
      unit: row.unit,
      misfit: row.misfit ?? '',
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}

function unanswered(row: ReferenceRow): Numbers {
  return { formulaId: '', printed: row.expected, published: Number(row.expected), ours: null, tolerance: 0 };
}
