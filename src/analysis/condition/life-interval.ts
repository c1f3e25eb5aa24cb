import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import type { StorageLife } from '../../simulation/bed/storage-life.ts';
import { lifeUsed, type Moved } from './life-used.ts';
import type { PlaceTrack } from './place-tracks.ts';

/** A place, its moistures and its weight in the mean. */
export interface WeighedPlace {
  track: PlaceTrack;
  /** [steps], fraction, wet basis */
  moistureWb: Float64Array;
  share: number;
}

export interface LifeErrors {
  crop: string;
  /** standard errors of temperature, K, and moisture, fraction */
  sdK: number;
  sdWb: number;
  /** the other rules in use for the crop */
  others: readonly StorageLife[];
}

/**
 * How far a rule lies from what was measured, standard error of the logarithm. Corn and cereals: NDSU's table lies 5 to 40 %
 * below the equation, hybrids and damage part as much; wheat: measured from 28 % shorter to 8 % longer; soybeans: a shift of
 * corn, measured 1.5 to 3 times as long. What was measured and by whom stands in `storage-rules.ts`; the spreads are our own judgement.
 */
const RULE_SD: Readonly<Record<string, number>> = { soybean: 0.45, sunflower: 0.45, canola: 0.45, rapeseed: 0.45 };
const USUAL_RULE_SD = 0.25;

/**
 * Share of the storage time used, mean of some places, with its 90 % interval: what thermometers, moistures and the rule itself
 * leave open as squares of its logarithm; holes of the log and the crop's other rules on their own side.
 */
export function lifeInterval(life: StorageLife, places: readonly WeighedPlace[], errors: LifeErrors): Estimate {
  const by = (other: StorageLife, moved: Moved = {}) =>
    places.reduce((sum, one) => sum + one.share * lifeUsed(other, one.track, one.moistureWb, moved), 0);
  const middle = by(life);
  if (!(middle > 0)) return estimate(0, 0, 0);
  const moves = (moved: Moved) => Math.log(by(life, moved) / middle);
  // To each side by its own step: the drier the grain, the more a point of moisture matters.
  const sd = (side: 1 | -1) =>
    Math.hypot(
      moves({ addK: side * errors.sdK }),
      moves({ addWb: side * errors.sdWb }),
      RULE_SD[errors.crop] ?? USUAL_RULE_SD,
    );
  const ratios = errors.others.map((other) => by(other) / middle);
  const low = Math.min(1, ...ratios) * Math.exp(moves({ holes: 'cold' }) - Z90 * sd(-1));
  const high = Math.max(1, ...ratios) * Math.exp(moves({ holes: 'warm' }) + Z90 * sd(1));
  return estimate(middle, middle * low, middle * high);
}
