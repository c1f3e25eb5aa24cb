import { binModel } from '../../src/analysis/model/bin-model.ts';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { tellWhatIf, type WhatIfTold } from '../../src/analysis/what-if/season-what-if.ts';
import { type SeasonBytes, seasonOfBytes } from './season-bytes.ts';

/** A bin to be fitted in a thread. */
export interface BinTask {
  season: SeasonBytes;
  review: BinReview;
}

/** What worker threads do with a bin: fit its bed, and for a review run it in other ways too. */
export function fitBin({ season, review }: BinTask): BinModel {
  return binModel(seasonOfBytes(season), review);
}

export function whatIfOfBin({ season, review }: BinTask): WhatIfTold {
  return tellWhatIf(seasonOfBytes(season), review);
}
