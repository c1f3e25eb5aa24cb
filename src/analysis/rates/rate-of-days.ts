import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { theilSen } from '../../base/stats/theil-sen.ts';
import { ASSUMED_MOVING_AIR_SD } from '../moisture/moving-air-error.ts';
import type { RateDay } from './moisture-rates-types.ts';
import type { ChangeErrors } from './rate-days.ts';
import { restsOf } from './rests.ts';

/** Less running than this moves the mean by less than a reading tells. */
const LEAST_HOURS = 24;
/** Two days nearer than this in fan hours say nothing of a slope. */
const LEAST_APART_H = 6;
const LEAST_DAYS = 5;

export interface DaysRate {
  perHundredFanHours: Estimate;
  days: number;
  stillDays: number;
}

/**
 * Points per 100 fan hours of some days: a robust line (the middle slope of all pairs), since a stuck day or a reading in
 * damp air must not turn it. Days of still air alone, where there are five that span half of the running and they leave
 * the rate surer, else all.
 * Where the change bends, fast at first and slow after, no line is the rate: its interval reaches to what the first and the
 * last of the days say of the whole.
 * Its interval joins that of the line with the errors that all of its days share: drift, the grain that no sensor sees,
 * and the lean of readings in moving air.
 *
 * @param partOfSeason  share of the season's days that these span, for the drift
 */
export function rateOfDays(days: readonly RateDay[], errors: ChangeErrors, partOfSeason: number): DaysRate {
  const still = restsOf(days.filter((day) => day.stillAir));
  const all = restsOf(days);
  const byAll = rateThrough(all, errors, partOfSeason);
  if (still.length < LEAST_DAYS || span(still) < span(all) / 2) return byAll;
  const byStill = rateThrough(still, errors, partOfSeason);
  return width(byStill) <= width(byAll) ? byStill : byAll;
}

function span(of: readonly RateDay[]): number {
  return of.length === 0 ? 0 : of[of.length - 1].fanHours - of[0].fanHours;
}

function width({ perHundredFanHours: { interval } }: DaysRate): number {
  return interval === null ? Number.POSITIVE_INFINITY : interval[1] - interval[0];
}

function rateThrough(used: readonly RateDay[], errors: ChangeErrors, partOfSeason: number): DaysRate {
  const stillDays = used.filter((day) => day.stillAir).length;
  const told = (perHundredFanHours: Estimate): DaysRate => ({ perHundredFanHours, days: used.length, stillDays });
  const hours = span(used);
  if (hours < LEAST_HOURS) {
    return told(withheld('The fan ran less than 24 h between the first and the last day of readings.'));
  }
  if (used.length < LEAST_DAYS) return told(withheld('Fewer than five days of readings with fan hours between them.'));
  const line = theilSen(
    used.map((day) => day.fanHours),
    used.map((day) => day.points),
    LEAST_APART_H,
  );
  if (line === null) {
    return told(
      withheld('The days are too few, or hang together too closely, to tell how sure a line through them is.'),
    );
  }
  const moved = Math.abs(line.slope) * hours;
  // Two ends of a line, each read in moving air.
  const lean = stillDays >= used.length / 2 ? 0 : Math.SQRT2 * ASSUMED_MOVING_AIR_SD;
  const shared = errors.reach * Math.hypot(errors.driftSd * partOfSeason, errors.perPoint * moved, lean);
  const ends = (used[used.length - 1].points - used[0].points) / hours;
  const low = Math.hypot(line.slope - Math.min(line.low, ends), shared / hours);
  const high = Math.hypot(Math.max(line.high, ends) - line.slope, shared / hours);
  return told(estimate(100 * line.slope, 100 * (line.slope - low), 100 * (line.slope + high)));
}
