import { halve } from '../../base/halve.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import type { ResistanceCurve } from '../../bin/resistance-curves.ts';

/** No blower pushes a bin's air faster through its grain, m/s: beyond every curve's range. */
const MOST_MS = 2;

/** Air power over electric power: fans turn 0.30 to 0.65 of their shaft power into air power, motors 0.80 to 0.94 of theirs into shaft power (common practice). */
const MOST_EFFICIENCY = 0.65 * 0.94;

/**
 * Airflow that no fan of this power can exceed through a bed: a good fan and motor, and the grain loose and clean.
 *
 * @param curve   of the crop; beyond the airflows that were measured it is carried on
 * @param powerW  electric power, W, > 0
 * @param areaM2  floor area, m2, > 0
 * @param depthM  of the grain, m, > 0
 * @returns       m3/s
 * @source        power is pressure times volume flow; of the constants: `curve.sourceKey`
 */
export function mostAirflowM3S(curve: ResistanceCurve, powerW: number, areaM2: number, depthM: number): number {
  const powerAt = (velocityMS: number) => areaM2 * velocityMS * depthM * resistancePaM(curve.a, curve.b, velocityMS);
  return areaM2 * halve(0, MOST_MS, (middle) => powerAt(middle) < MOST_EFFICIENCY * powerW);
}
