import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { CableSpread } from './cable-spread.ts';
import { chosenInterval } from './chosen-interval.ts';
import { type ErrorPart, joinErrors } from './error-part.ts';
import { isothermPart } from './isotherm-part.ts';
import { type MoistureMoment, movingAirPart } from './moisture-moment.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { driftPart, noisePart } from './reading-parts.ts';
import { samplingParts } from './sampling-parts.ts';

export interface PointsRemoved {
  points: Estimate;
  parts: readonly ErrorPart[];
  /** null where no part was estimated from few values */
  degreesOfFreedom: number | null;
}

/**
 * Points removed with the 90 % interval. Fixed errors of the sensors and a bias that they share cancel where the same
 * sensors tell both moments; where the moments come from different sources, each brings all of its own errors.
 */
export function pointsRemoved(
  observed: ObservedMoisture,
  start: MoistureMoment,
  end: MoistureMoment,
  pooled: CableSpread | null,
): PointsRemoved {
  const from = start.mean.value;
  const to = end.mean.value;
  if (from === null || to === null) {
    const whys = new Set([start.why, end.why].filter((why) => why !== null));
    return { points: withheld([...whys].join(' ')), parts: [], degreesOfFreedom: null };
  }
  const points = 100 * (from - to);
  const sameSensors = start.mean.from === 'sensors' && end.mean.from === 'sensors';
  const parts = sameSensors ? differenceParts(observed, points, pooled) : bothParts(start, end);
  const { df } = joinErrors(parts);
  return {
    points: estimate(points, ...chosenInterval(points, parts)),
    parts,
    degreesOfFreedom: Number.isFinite(df) ? df : null,
  };
}

/** More points of another source, with its own error. */
export function withPart({ points, parts }: PointsRemoved, more: number, part: ErrorPart): PointsRemoved {
  if (points.value === null) return { points, parts, degreesOfFreedom: null };
  const all = [...parts, part].filter((one) => one.sd > 0);
  const { df } = joinErrors(all);
  const value = points.value + more;
  return {
    points: estimate(value, ...chosenInterval(value, all)),
    parts: all,
    degreesOfFreedom: Number.isFinite(df) ? df : null,
  };
}

function differenceParts(observed: ObservedMoisture, points: number, pooled: CableSpread | null): ErrorPart[] {
  const { moments, fill, input, changes } = observed;
  const parts = [
    ...samplingParts(changes, fill.depthM!, input.bin.diameterM, points, pooled, input.bin.air),
    noisePart(moments.rows, ['start', 'end'], input.season.sensors.moisture),
    driftPart(moments.rows),
    isothermPart(observed),
    movingAirPart(observed, ['start', 'end']),
    missedPart(observed, points),
    movedPart(observed, points),
  ];
  return parts.filter((part) => part.sd > 0);
}

/** What the fans removed between filling and the first day, and after the last: nothing to twice the usual rate. */
function missedPart({ moments }: ObservedMoisture, points: number): ErrorPart {
  const missed = moments.start!.missedFanHours + moments.end!.missedFanHours;
  const rate = moments.fanHoursBetween > 0 ? Math.abs(points) / moments.fanHoursBetween : 0;
  return {
    cause: 'fan hours before the first day and after the last',
    sd: (rate * missed) / Math.sqrt(3),
    df: Number.POSITIVE_INFINITY,
  };
}

/**
 * A bin that still counts as whole may have been topped up or cored. Topped-up grain lay there for part of the time
 * only; grain taken out may be as far from the mean as the wettest or driest that a sensor shows, and the rest slides.
 */
function movedPart({ input, fill, moments }: ObservedMoisture, points: number): ErrorPart {
  const from = moments.start!.span.fromMs;
  const to = moments.end!.span.toMs;
  let added = 0;
  let taken = 0;
  input.bin.grain.depthSteps.forEach((step, i, steps) => {
    if (i === 0 || !(step.fromMs > from && step.fromMs < to)) return;
    const change = (step.depthM - steps[i - 1].depthM) / fill.depthM!;
    added += Math.max(0, change);
    taken += Math.max(0, -change);
  });
  const ends = moments.rows.map((row) => 100 * row.end.value);
  const range = Math.max(...ends) - Math.min(...ends);
  return {
    cause: 'grain topped up or taken out in between',
    sd: Math.hypot(added * points, taken * range) / Math.sqrt(3),
    df: Number.POSITIVE_INFINITY,
  };
}

function bothParts(start: MoistureMoment, end: MoistureMoment): ErrorPart[] {
  const named = (moment: MoistureMoment, at: string) =>
    moment.parts.map((part) => ({ ...part, cause: `${part.cause}, at the ${at}` }));
  return [...named(start, 'start'), ...named(end, 'end')].filter((part) => part.sd > 0);
}
