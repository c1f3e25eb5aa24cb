import type { Estimate } from '../../base/estimate.ts';
import type { Span } from '../types.ts';

/** A time in which no grain came or went. */
export interface MoistureStage {
  span: Span;
  depthM: number;
  /** dry matter over that of the full bin */
  share: number;
  /** as the log tells them */
  fanHours: Estimate;
  /** known and likely, h; null without a fan log */
  likelyHours: number | null;
  /** mean of the grain in place, wet basis, fractions */
  startWb: number | null;
  endWb: number | null;
  /** removed from the grain in place, points; positive when removed */
  points: Estimate;
  /**
   * Change of the mean, points, positive when it fell, from the end of the stage before to the start of this one: by grain
   * that came or went, no drying. Null for the first stage
   */
  mixed: Estimate | null;
}

/** The balance over all stages of a bin that was filled or emptied in steps. */
export interface MoistureStages {
  stages: readonly MoistureStage[];
  /** sum of stage points times the share of the grain in place: points per bushel of the full bin */
  perFullBushel: Estimate;
  /** sum of the points of all stages from the full bin on: what the grain that stayed to the end lost */
  stayed: Estimate;
  /** fan hours of the stages that the points removed do not cover: while it was filled, and after the first grain left */
  outsideFanHours: number | null;
  /** whole sentences */
  notes: readonly string[];
}
