import { type Estimate, withheld } from '../../base/estimate.ts';
import type { SeasonFront } from './season-front.ts';

/**
 * What the hours cost that a bin's fans ran on after its main front was through, in energy, at the bin's mean energy cost
 * of a fan hour; the season's currency. `after`: other hours of its fans than those. Which price the very hours had and whether they raised a peak is left out.
 */
export function ranOnCost(
  { main, review }: SeasonFront,
  after: Estimate = main?.afterHours ?? withheld('No front was followed.'),
): Estimate {
  const { hours, energyCost } = review.fan;
  if (after.value === null) return after;
  if (energyCost.value === null) return withheld(energyCost.why ?? 'The cost of its energy is not known.');
  if (hours.value === null || hours.value <= 0) return withheld(hours.why ?? 'Its fan hours are not known.');
  const perHour = (cost: number) => cost / (hours.value ?? 1);
  const end = (at: 0 | 1) => (after.interval?.[at] ?? 0) * perHour(energyCost.interval?.[at] ?? energyCost.value ?? 0);
  return { value: (after.value ?? 0) * perHour(energyCost.value), interval: [end(0), end(1)], why: null };
}
