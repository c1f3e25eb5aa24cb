import type { LoadedSeason } from '../../season/loaded.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { airflowWithModel } from '../model/airflow-with-model.ts';
import type { BinReview } from '../types.ts';
import { binWhatIf } from './bin-what-if.ts';
import type { BinWhatIf } from './what-if-types.ts';

export interface SeasonWhatIf {
  /** the bins with the airflow by their models beside the other ways */
  bins: BinReview[];
  whatIf: BinWhatIf[];
  /** bins whose model broke, each a line */
  broken: string[];
}

/** The what-if of every bin that could be reviewed. One that breaks takes nothing else along. */
export function seasonWhatIf(
  loaded: LoadedSeason,
  reviews: readonly BinReview[],
  series: readonly SensorSeries[],
  onBin: (name: string) => void,
): SeasonWhatIf {
  const whatIf: BinWhatIf[] = [];
  const broken: string[] = [];
  const bins = reviews.map((review) => {
    if (review.failure !== null) return review;
    onBin(`${review.bin.name}, other ways to run it`);
    try {
      const told = binWhatIf(loaded, review, series);
      whatIf.push(told);
      return { ...review, airflow: airflowWithModel(review.airflow, told.model) };
    } catch (error) {
      broken.push(`model of bin ${review.bin.id}: ${error instanceof Error ? error.message : String(error)}`);
      return review;
    }
  });
  return { bins, whatIf, broken };
}
