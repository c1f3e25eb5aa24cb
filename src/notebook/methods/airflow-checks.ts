import { bedPressurePa } from '../../bin/airflow-resistance.ts';
import { airPowerW, HP_W, hpPerThousandBushels } from '../../bin/fan-power.ts';
import { resistanceCurveOf } from '../../bin/resistance-curves.ts';
import { PACKING_FACTOR } from '../../bin/resistance-factors.ts';
import { velocityOfCfmPerBushel } from '../../bin/specific-airflow.ts';
import { CFM_M3S, FT_M, IN_WATER_PA } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { halfDigit, type ReferenceRow, readReference } from './read-reference.ts';

/** Assumed for published fan powers, whose source states neither. */
const ASSUMED_FAN_EFFICIENCY = 0.6;

/** A published static pressure or fan power: with its numbers for the chart. */
export interface AirflowCheck extends PublishedCheck {
  crop: string;
  kind: 'pressure' | 'fan power';
  velocityMS: number;
  depthM: number;
  /** pressure for each metre that the published value means, packed; of a fan power with the assumed efficiency */
  publishedPaM: number;
  oursPaM: number;
}

function numbersOf(row: ReferenceRow) {
  const depthM = Number(row.depth_ft) * FT_M;
  const velocityMS = velocityOfCfmPerBushel(Number(row.cfm_per_bu), depthM);
  return { depthM, velocityMS, curve: resistanceCurveOf(row.crop) };
}

/** The rows of tests/reference/airflow.csv. The table does not state its packing factor; 1.5 is the allowance of D272's notes. */
export function airflowChecks(): AirflowCheck[] {
  return readReference('airflow').map((row) => {
    const { depthM, velocityMS, curve } = numbersOf(row);
    const pressurePa = bedPressurePa(curve, velocityMS, depthM, PACKING_FACTOR);
    const published = Number(row.published);
    const flowM3S = 1000 * Number(row.cfm_per_bu) * CFM_M3S;
    const isPressure = row.unit === 'in. water';
    const hp = hpPerThousandBushels(airPowerW(pressurePa, flowM3S) / ASSUMED_FAN_EFFICIENCY, 1000);
    const publishedPa = isPressure ? published * IN_WATER_PA : (published * HP_W * ASSUMED_FAN_EFFICIENCY) / flowM3S;
    return {
      domain: 'airflow',
      group: isPressure
        ? `Static pressure, ${row.crop}, packing ${PACKING_FACTOR}`
        : `Fan power, ${row.crop}, packing ${PACKING_FACTOR} and ${100 * ASSUMED_FAN_EFFICIENCY} % fan efficiency assumed`,
      crop: row.crop,
      kind: isPressure ? 'pressure' : 'fan power',
      velocityMS,
      depthM,
      publishedPaM: publishedPa / depthM,
      oursPaM: pressurePa / depthM,
      formulaId: 'airflow-resistance',
      at: `${row.depth_ft} ft, ${row.cfm_per_bu} cfm/bu`,
      printed: row.published,
      published,
      unit: row.unit,
      ours: isPressure ? pressurePa / IN_WATER_PA : hp,
      // Half the printed digit, and 1 % for constants of three digits; of a fan power 5 %, as packing and efficiency are
      // assumed, which moves the answer more than the digit.
      tolerance: isPressure ? halfDigit(row.published) + 0.01 * published : 0.05 * published,
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
