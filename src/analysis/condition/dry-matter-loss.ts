import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { MOST_LOSS, type StorageLife } from '../../simulation/bed/storage-life.ts';
import type { PlaceAge } from './condition-types.ts';

const NO_LOSS = 'The rule of this crop counts germination, not dry matter.';
const PAST_CURVE = `By the rule some grain lost more than ${100 * MOST_LOSS} % of its dry matter, past the end of the curve that tells it.`;

/** What grain lost when it used so much of its time; missing where the rule counts germination, or the curve ends. */
export function lossOf({ lossOfShare }: StorageLife, used: Estimate): Estimate {
  if (lossOfShare === null) return withheld(NO_LOSS);
  if (used.value === null || used.interval === null) return withheld(used.why ?? NO_LOSS);
  // The curve's end is found by halving: a hair under.
  if (lossOfShare(used.value) >= MOST_LOSS * (1 - 1e-6)) return withheld(PAST_CURVE);
  return estimate(lossOfShare(used.value), lossOfShare(used.interval[0]), lossOfShare(used.interval[1]));
}

/** Loss rises faster than time, so that the mean of the losses is not the loss of the mean. */
export function meanLoss({ lossOfShare }: StorageLife, each: readonly PlaceAge[], mean: Estimate): Estimate {
  if (lossOfShare === null) return withheld(NO_LOSS);
  if (each.some((one) => one.loss.value === null)) return withheld(PAST_CURVE);
  const at = (times: number) =>
    each.reduce((sum, one) => sum + one.share * lossOfShare(times * (one.lifeUsed.value ?? 0)), 0);
  const { value, interval } = mean;
  if (value === null || interval === null || !(value > 0)) return estimate(at(1), at(1), at(1));
  return estimate(at(1), at(interval[0] / value), at(interval[1] / value));
}
