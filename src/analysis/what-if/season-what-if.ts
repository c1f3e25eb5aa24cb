import { errorText } from '../../base/error-text.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { airflowWithModel } from '../model/airflow-with-model.ts';
import type { BinReview } from '../types.ts';
import { binWhatIf } from './bin-what-if.ts';
import type { BinWhatIf } from './what-if-types.ts';

export interface SeasonWhatIf {
  /** the bins with the airflow by their models beside the other ways */
  bins: readonly BinReview[];
  whatIf: BinWhatIf[];
  /** bins whose model broke, each a line */
  broken: string[];
}

/** What a bin's what-if came to, or what it broke of. */
export type WhatIfTold = { told: BinWhatIf } | { broke: string };

/**
 * Works the what-ifs of bins out, in one thread or in several; one that breaks takes nothing else along.
 *
 * @param reviews  of bins that could be reviewed
 * @param onBin    told of each bin before its work begins, in their order
 * @returns        in the order of `reviews`
 */
export type WhatIfs = (
  loaded: LoadedSeason,
  reviews: readonly BinReview[],
  onBin: (line: string) => void,
) => Promise<readonly WhatIfTold[]>;

export function tellWhatIf(loaded: LoadedSeason, review: BinReview): WhatIfTold {
  try {
    return { told: binWhatIf(loaded, review) };
  } catch (error) {
    return { broke: errorText(error) };
  }
}

/** `WhatIfs` in this thread, one bin after the other. */
export function whatIfsHere(
  loaded: LoadedSeason,
  reviews: readonly BinReview[],
  onBin: (line: string) => void,
): WhatIfTold[] {
  return reviews.map((review) => {
    onBin(whatIfLine(review));
    return tellWhatIf(loaded, review);
  });
}

/** What is said of a bin as its what-if begins. */
export function whatIfLine({ bin }: BinReview): string {
  return `${bin.name}, other ways to run it`;
}

/** @param told  of the reviews that did not fail, in their order */
export function seasonWhatIf(reviews: readonly BinReview[], told: readonly WhatIfTold[]): SeasonWhatIf {
  const whatIf: BinWhatIf[] = [];
  const broken: string[] = [];
  let next = 0;
  const bins = reviews.map((review) => {
    if (review.failure !== null) return review;
    const one = told[next++];
    if ('broke' in one) {
      broken.push(`model of bin ${review.bin.id}: ${one.broke}`);
      return review;
    }
    whatIf.push(one.told);
    return { ...review, airflow: airflowWithModel(review.airflow, one.told.model) };
  });
  return { bins, whatIf, broken };
}
