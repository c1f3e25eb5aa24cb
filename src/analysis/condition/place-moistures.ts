import { Z90, Z95 } from '../../base/estimate.ts';
import type { SensorErrors } from '../../season/season.ts';
import { ASSUMED_ACCURACY, ASSUMED_BIAS } from '../moisture/reading-parts.ts';
import type { BinMoisture } from '../types.ts';
import { type MeanMoistureOf, meanMoistureAt } from './mean-moisture-at.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { sensorLean } from './sensor-lean.ts';

/** Moistures of a bin's places, and how far they may be off. */
export interface PlaceMoistures {
  /** by place, [steps], fraction, wet basis; NaN where not known */
  moistureWb: readonly Float64Array[];
  /** standard errors, fractions: of one place, and of the mean of all */
  placeSdWb: number;
  meanSdWb: number;
  /** places whose own moisture is not logged: the bin's mean stands for it */
  byMean: number;
  /** why the bin's mean is not known; null where it is */
  why: string | null;
}

/** Readings in moving air lean towards the air that passes, sd, fraction. Working assumption. */
const MOVING_SD = 0.002;
/** How far a place lies from the mean of its bin while a front of drying stands in it, sd, fraction. Working assumption. */
const FROM_MEAN_SD = 0.012;

export interface MoisturesOf extends MeanMoistureOf {
  tracks: readonly PlaceTrack[];
  moisture: Pick<BinMoisture, 'daily' | 'start' | 'end' | 'shares'>;
  errors: SensorErrors['moisture'];
}

/**
 * The moistures that the places' ageing goes by: a place's own, else the bin's mean of the day, else what lies between its
 * start and end by fan hours.
 */
export function placeMoistures(of: MoisturesOf): PlaceMoistures {
  const { tracks, moisture, errors } = of;
  const { moistureWb: mean, why } = meanMoistureAt(of);
  const isOwn = tracks.map((track) => track.moistureWb.some((one) => !Number.isNaN(one)));
  const { offWb, leftSdWb } = sensorLean(moisture, errors.accuracyWb ?? ASSUMED_ACCURACY / 100);
  const meanSdWb = Math.hypot(momentSd(moisture) ?? (errors.biasWb ?? ASSUMED_BIAS / 100) / Z95, MOVING_SD);
  const byMean = isOwn.filter((own) => !own).length;
  const beside = tracks.length === 0 ? 0 : (byMean / tracks.length) * FROM_MEAN_SD;
  return {
    moistureWb: tracks.map(({ cable, sensor, moistureWb }, i) => {
      const off = isOwn[i] ? offWb(cable, sensor) : 0;
      return isOwn[i] ? moistureWb.map((one) => one - off) : mean;
    }),
    placeSdWb: Math.hypot(meanSdWb, leftSdWb, beside),
    meanSdWb,
    byMean,
    why,
  };
}

/** Standard error of the bin's mean moisture: the larger of start and end, whose intervals hold sensors, isotherm and unseen grain. */
function momentSd({ start, end }: Pick<BinMoisture, 'start' | 'end'>): number | null {
  const halves = [start, end].flatMap(({ interval }) =>
    interval == null ? [] : [(interval[1] - interval[0]) / 2 / Z90],
  );
  return halves.length === 0 ? null : Math.max(...halves);
}
