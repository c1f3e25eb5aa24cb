import { type Estimate, estimate } from '../../base/estimate.ts';
import { type CablePoints, meanMoisture } from './cable-points.ts';
import { ASSUMED_SPREAD, type CableSpread, joinSpreads, ownSpread } from './cable-spread.ts';
import { type ErrorPart, moistureInterval } from './error-part.ts';
import { COMMON_SHARE } from './height-error.ts';
import { layerHeightError } from './layer-height-error.ts';
import type { LayerPart } from './layer-weights.ts';
import { movingAirPart } from './moisture-moment.ts';
import type { MomentName } from './moment-window.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { BEYOND_CABLES, radialError } from './radial-error.ts';
import { driftPart, fixedParts, noisePart } from './reading-parts.ts';

/** A front stands at other heights in other cables: in a third they differ twice as much as over the depth (working assumption). */
const LAYER_SPREAD = 2;
/** The layer where the air comes in leans most towards it: twice the lean of the bin's mean (working assumption). */
const LAYER_LEAN = 2;

/** Standard errors of the mean of a layer between two heights at one moment, points. */
export function layerParts(
  observed: ObservedMoisture,
  moment: MomentName,
  pooled: CableSpread | null,
  weights: readonly LayerPart[],
  fromM: number,
  toM: number,
): ErrorPart[] {
  const { input, moments, fill } = observed;
  const { bin, season } = input;
  const errors = season.sensors.moisture;
  const counted = weights.map(({ index, weight, cableShare, heightShare }) => ({
    ...moments.rows[index],
    share: weight,
    cableShare,
    heightShare,
  }));
  const cables: CablePoints[] = [...new Set(counted.map((row) => row.cable))].map((cable) => {
    const own = counted.filter((row) => row.cable === cable);
    const mean = meanMoisture(
      own.map((row) => row[moment].value),
      own.map((row) => row.heightShare),
    );
    return { cable, points: 100 * mean, weight: own[0].cableShare, fromCentreM: own[0].fromCentreM };
  });
  const changed = counted.map((row) => 100 * (row.start.value - row.end.value)).filter((one) => !Number.isNaN(one));
  const change = Math.max(1, ...changed.map(Math.abs));
  const wide = (spread: CableSpread) => ({ ...spread, variance: spread.variance * LAYER_SPREAD ** 2 });
  const own = ownSpread(cables, change);
  const spread = joinSpreads([wide(ASSUMED_SPREAD), ...(pooled === null ? [] : [wide(pooled)]), own]);
  const together = Math.sqrt(cables.reduce((sum, one) => sum + one.weight ** 2, 0));
  const each = cables.map((one) => {
    const column = moments.rows.filter((row) => row.cable === one.cable).sort((a, b) => a.heightM - b.heightM);
    const heightsM = column.map((row) => row.heightM);
    const percents = column.map((row) => 100 * row[moment].value);
    return one.weight * layerHeightError(heightsM, percents, fill.depthM!, fromM, toM, bin.air);
  });
  const common = each.reduce((sum, sd) => sum + sd, 0);
  const apart = each.reduce((sum, sd) => sum + sd ** 2, 0);
  const heights = Math.sqrt(COMMON_SHARE * common ** 2 + (1 - COMMON_SHARE) * apart);
  const firm = Number.POSITIVE_INFINITY;
  return [
    ...fixedParts(counted, errors),
    { cause: 'spread between cables', sd: change * Math.sqrt(spread.variance) * together, df: spread.df },
    { cause: 'fronts between the heights of the sensors', sd: heights, df: firm },
    {
      cause: BEYOND_CABLES,
      sd: radialError(cables, bin.diameterM / 2, change),
      df: firm,
    },
    noisePart(counted, [moment], errors),
    ...(moment === 'end' ? [driftPart(counted)] : []),
    ...(moments[moment]!.stillAir ? [] : [lean(movingAirPart(observed, [moment]))]),
  ].filter((part) => part.sd > 0);
}

function lean(part: ErrorPart): ErrorPart {
  return { ...part, sd: LAYER_LEAN * part.sd };
}

/** A moisture with the 90 % interval of its parts, fractions. */
export function around(value: number, parts: readonly ErrorPart[]): Estimate {
  return estimate(value, ...moistureInterval(value, parts));
}
