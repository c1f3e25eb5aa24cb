import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { CableSpread } from './cable-spread.ts';
import { type ErrorPart, joinErrors } from './error-part.ts';
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
  const { df, half90 } = joinErrors(parts);
  return {
    points: estimate(points, points - half90, points + half90),
    parts,
    degreesOfFreedom: Number.isFinite(df) ? df : null,
  };
}

function differenceParts(observed: ObservedMoisture, points: number, pooled: CableSpread | null): ErrorPart[] {
  const { moments, fill, input, changes } = observed;
  const parts = [
    ...samplingParts(changes, fill.depthM!, input.bin.diameterM, points, pooled, input.bin.air),
    noisePart(moments.rows, ['start', 'end'], input.season.sensors.moisture),
    driftPart(moments.rows),
    movingAirPart(observed, ['start', 'end']),
    missedPart(observed, points),
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

function bothParts(start: MoistureMoment, end: MoistureMoment): ErrorPart[] {
  const named = (moment: MoistureMoment, at: string) =>
    moment.parts.map((part) => ({ ...part, cause: `${part.cause}, at the ${at}` }));
  return [...named(start, 'start'), ...named(end, 'end')].filter((part) => part.sd > 0);
}
