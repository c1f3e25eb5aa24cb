import { tQuantile } from '../../base/stats/t-quantile.ts';
import { ASSUMED_MOVING_AIR_SD } from '../moisture/moving-air-error.ts';
import { DRIFT_SD } from '../moisture/reading-parts.ts';
import type { BinMoisture } from '../types.ts';
import type { RateDay } from './moisture-rates-types.ts';

const DRIFT = 'drift of the sensors';
const NOISE = 'noise of the readings';
/** Parts of the whole change that do not scale with it, or that have nothing to do with a single day. */
const APART = /^(drift of the sensors|noise of the readings|readings while the fan ran|fan hours before)/;
/** A single day's noise where the bin's parts do not tell it, points. */
const ASSUMED_NOISE = 0.1;
/** Error of a change seen by a few cables, where the bin's parts do not tell it: share of the change (working assumption, from memory). */
const ASSUMED_SPREAD = 0.1;

/** Standard errors of a change by how it comes about, points. */
export interface ChangeErrors {
  /** of a day's mean */
  noiseSd: number;
  /** from the first day to the last */
  driftSd: number;
  /** of a point of change: what cables and heights leave unseen */
  perPoint: number;
  /** from standard error to half of the 90 % interval */
  reach: number;
}

/** The errors that do not cancel between two days of the same sensors, out of the parts that make up the bin's interval. */
export function changeErrors({ errorParts, pointsRemoved, degreesOfFreedom }: BinMoisture): ChangeErrors {
  const own = errorParts.filter(({ cause }) => !cause.includes(', at the '));
  const of = (name: string) => own.find(({ cause }) => cause === name)?.sd;
  // The parts that scale with the change were worked out for a change of at least one point.
  const scale = Math.max(1, Math.abs(pointsRemoved.value ?? 0));
  const unseen = own.filter(({ cause }) => !APART.test(cause));
  return {
    noiseSd: of(NOISE) ?? ASSUMED_NOISE,
    driftSd: of(DRIFT) ?? DRIFT_SD,
    perPoint: unseen.length === 0 ? ASSUMED_SPREAD : Math.hypot(...unseen.map(({ sd }) => sd)) / scale,
    reach: tQuantile(0.95, degreesOfFreedom ?? Number.POSITIVE_INFINITY),
  };
}

/** Days with a mean moisture as points removed over fan hours, each with how far its readings may be off. */
export function rateDays(moisture: BinMoisture): RateDay[] {
  const { daily, start } = moisture;
  const known = daily.flatMap((day, i) =>
    day.mean === null ? [] : [{ ...day, mean: day.mean, fanHours: ((daily[i - 1]?.fanHours ?? 0) + day.fanHours) / 2 }],
  );
  if (known.length === 0) return [];
  const from =
    start.from === 'sensors' && start.value !== null
      ? start.value
      : (known.find((day) => day.stillAir) ?? known[0]).mean;
  const errors = changeErrors(moisture);
  const firstMs = known[0].dayMs;
  const lengthMs = Math.max(1, known[known.length - 1].dayMs - firstMs);
  return known.map(({ dayMs, fanHours, mean, stillAir }) => {
    const points = 100 * (from - mean);
    const drift = (errors.driftSd * (dayMs - firstMs)) / lengthMs;
    const moving = stillAir ? 0 : ASSUMED_MOVING_AIR_SD;
    const half = errors.reach * Math.hypot(errors.noiseSd, drift, errors.perPoint * points, moving);
    return { dayMs, fanHours, points, low: points - half, high: points + half, stillAir };
  });
}
