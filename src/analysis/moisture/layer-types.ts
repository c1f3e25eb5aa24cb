import type { Estimate } from '../../base/estimate.ts';

export type LayerName = 'bottom' | 'middle' | 'top';

/** A third of the depth, so a third of the dry matter. */
export interface GrainLayer {
  name: LayerName;
  fromM: number;
  toM: number;
  /** mean moisture, wet basis, fraction, averaged as dry basis; 90 % interval */
  moisture: Estimate;
  /** sensors that hang in it */
  sensors: number;
}

/** What comes out of the spout at the end, wet basis, fractions. */
export interface UnloadMix {
  /** the whole bin, well mixed */
  mixed: Estimate;
  /** the column in the centre, floor to surface: what flows first to a centre sump; withheld without a cable there */
  centre: Estimate;
  /** the cable that tells of the centre */
  centreCable: string | null;
  /** the driest and the wettest third; null where fewer than two are told */
  driest: GrainLayer | null;
  wettest: GrainLayer | null;
}

/** The thirds of a bin, from the bottom up. */
export interface BinLayers {
  start: readonly GrainLayer[];
  end: readonly GrainLayer[];
  /** wettest third less driest at the end, points; what all sensors share cancels */
  spread: Estimate;
  unload: UnloadMix;
  why: string | null;
}
