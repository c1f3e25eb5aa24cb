import type { Estimate } from '../../base/estimate.ts';

/** How deep the grain lay when the bin was full, by the temperatures at rest. */
export interface GrainSurface {
  /** levelled, m; 90 % interval */
  depthM: Estimate;
  /** as stated, m; null where none is */
  statedM: number | null;
  /** cables whose highest sensors tell it */
  cables: number;
  /** true: a heap, and all that the interval holds, leave no room for the stated depth */
  contradicted: boolean;
}
