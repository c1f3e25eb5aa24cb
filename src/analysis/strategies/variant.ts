import { assertRange } from '../../base/errors.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { resistanceCurveOf } from '../../bin/resistance-curves.ts';
import { dryFromWet, wetFromDry } from '../../grain/moisture-basis.ts';
import type { Blower } from '../../simulation/run/blower.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';

/** What is changed in a bin's season to see how much hangs on it. */
export interface Variant {
  /** multiplies the airflow; 1 as it is */
  airflowFactor: number;
  /** filled so many days later; 0 as it was */
  fillDays: number;
  /** grain comes in wetter by so many percentage points; 0 as it was */
  startPoints: number;
}

export const AS_IT_IS: Variant = { airflowFactor: 1, fillDays: 0, startPoints: 0 };

/** One thing moved at a time: its steps. */
export const VARIED = {
  airflow: [0.5, 0.75, 1.25, 1.5, 2].map((airflowFactor) => ({ ...AS_IT_IS, airflowFactor })),
  'fill-date': [-14, -7, 7, 14].map((fillDays) => ({ ...AS_IT_IS, fillDays })),
  'start-moisture': [-2, -1, 1, 2].map((startPoints) => ({ ...AS_IT_IS, startPoints })),
} as const satisfies Record<string, readonly Variant[]>;

export type Varied = keyof typeof VARIED;

const WETTEST_WB = 0.4;
const DRIEST_WB = 0.05;

export const AIRFLOW_LAW =
  'Another airflow through the same grain: static pressure follows the crop’s resistance curve (ASAE D272.3), power is airflow times pressure at the same efficiency of fan and motor, the fan’s warming of the air follows the pressure. A heater keeps its output, so its warming falls as the air rises. Whether a fan on sale gives just that air at that pressure is for its curve to say.';

/** The bin with another fan: so many times the air through the same grain. @valid factor 0.1 to 10; throws RangeError outside, and for a crop without a resistance curve */
export function withAirflow(spec: RunSpec, factor: number): RunSpec {
  assertRange('airflowFactor', factor, 0.1, 10);
  if (factor === 1) return spec;
  const { a, b } = resistanceCurveOf(spec.bed.medium.crop);
  const blown = (blower: Blower): Blower => {
    const { airM3M2S } = blower;
    if (!(airM3M2S > 0)) return blower;
    const pressure = resistancePaM(a, b, factor * airM3M2S) / resistancePaM(a, b, airM3M2S);
    return {
      ...blower,
      airM3M2S: factor * airM3M2S,
      warmingK: pressure * blower.warmingK,
      powerW: factor * pressure * blower.powerW,
      heaterK: blower.heaterK / factor,
    };
  };
  return { ...spec, levels: spec.levels.map((level) => ({ ...level, blower: blown(level.blower) })) };
}

/** The bin with grain that came in wetter (drier below 0) by so many percentage points, wet basis; its dry matter stays. */
export function withStartMoisture(spec: RunSpec, points: number): RunSpec {
  assertRange('startPoints', points, -20, 20);
  if (points === 0) return spec;
  const moved = (moistureDb: number) =>
    dryFromWet(Math.min(WETTEST_WB, Math.max(DRIEST_WB, wetFromDry(moistureDb) + points / 100)));
  return {
    ...spec,
    levels: spec.levels.map((level) => ({ ...level, moistureDb: moved(level.moistureDb) })),
    ...(spec.start === undefined ? {} : { start: { ...spec.start, moistureDb: spec.start.moistureDb.map(moved) } }),
  };
}
