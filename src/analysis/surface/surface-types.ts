import type { Estimate } from '../../base/estimate.ts';

/** How deep the grain lay while the bin stood at rest, by its temperatures. */
export interface GrainSurface {
  /** levelled, m; 90 % interval */
  depthM: Estimate;
  /** as stated for that time, m; null where none is */
  statedM: number | null;
  /** cables whose highest sensors tell it */
  cables: number;
  /** true: a heap, and all that the interval holds, leave no room for the stated depth */
  contradicted: boolean;
}
