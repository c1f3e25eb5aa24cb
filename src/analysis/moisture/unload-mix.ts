import { type Estimate, withheld } from '../../base/estimate.ts';
import type { MomentMean } from '../types.ts';
import { meanMoisture } from './cable-points.ts';
import type { CableSpread } from './cable-spread.ts';
import { around, layerParts } from './layer-parts.ts';
import type { GrainLayer, UnloadMix } from './layer-types.ts';
import { layerWeights } from './layer-weights.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { BEYOND_CABLES, CORE_RADIUS } from './radial-error.ts';

/**
 * What an unload brings: the whole bin mixed; the driest and the wettest third, between which loads may run; and the
 * column in the centre, which flows first. Grain over a centre sump flows as a funnel: the core from floor to surface, then
 * the top, sliding in from the surface, the bottom along the wall last (common practice).
 *
 * @param told  the thirds at the end that can be told, wettest first
 */
export function unloadMix(
  observed: ObservedMoisture,
  pooled: CableSpread | null,
  end: MomentMean,
  told: readonly GrainLayer[],
): UnloadMix {
  const mixed: Estimate =
    end.value === null
      ? withheld(observed.moments.endWhy ?? 'The moisture at the end is not known.')
      : { value: end.value, interval: end.interval ?? null, why: null };
  const { centre, cable } = centreColumn(observed, pooled);
  const several = told.length > 1;
  return {
    mixed,
    centre,
    centreCable: cable,
    driest: several ? told[told.length - 1] : null,
    wettest: several ? told[0] : null,
  };
}

function centreColumn(
  observed: ObservedMoisture,
  pooled: CableSpread | null,
): { centre: Estimate; cable: string | null } {
  const { moments, fill, input } = observed;
  const none = (why: string) => ({ centre: withheld(why), cable: null });
  if (moments.end === null || fill.depthM === null) return none(moments.endWhy ?? 'No sensor tells of the end.');
  const core = moments.rows.filter((row) => row.fromCentreM <= (CORE_RADIUS * input.bin.diameterM) / 2);
  if (core.length === 0) return none('No cable that was read hangs near the centre, whose grain flows first.');
  const nearest = core.reduce((best, row) => (row.fromCentreM < best.fromCentreM ? row : best));
  const own = moments.rows.filter((row) => row.cable === nearest.cable);
  const within = { ...observed, moments: { ...moments, rows: own } };
  const { parts } = layerWeights(own, fill.depthM, 0, fill.depthM);
  const value = meanMoisture(
    parts.map(({ index }) => own[index].end.value),
    parts.map(({ weight }) => weight),
  );
  // The cable stands for the core alone: what lies beyond it is no error of the column.
  const errors = layerParts(within, 'end', pooled, parts, 0, fill.depthM).filter(
    (part) => part.cause !== BEYOND_CABLES,
  );
  return { centre: around(value, errors), cable: nearest.cable };
}
