import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import { fanGroups, sharedFans } from '../energy/fan-groups.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import { ranOnCost } from './front-cost.ts';
import type { SeasonFront } from './season-front.ts';

/** What the fans of one bin, or of several that share them, ran on after the cooling front was through in the last of these. */
export interface RanOn {
  /** fan hours, each once */
  hours: Estimate;
  /** energy of those hours, the season's currency; at each bin's mean energy cost of a fan hour */
  cost: Estimate;
  /** the bin that the front came through last; null where that is not told */
  last: SeasonFront | null;
}

/** Fronts of bins that share fans together, in the order of the bins. */
export function frontGroups(fronts: readonly SeasonFront[]): SeasonFront[][] {
  const groups = fanGroups(fronts.map((front) => ({ bin: front.review.bin, front })));
  return groups.map((group) => group.map(({ front }) => front));
}

/**
 * Until the last bin of a shared fan is through its hours are needed; what was run on is what was run after that, in all of
 * the bins' campaigns.
 *
 * @param fronts  of the bins that share fans; one bin that shares none alone
 */
export function ranOnTogether(fronts: readonly SeasonFront[]): RanOn {
  if (fronts.length === 1) {
    const [one] = fronts;
    return { hours: one.main?.afterHours ?? withheld('No front was followed.'), cost: ranOnCost(one), last: one };
  }
  const open = fronts.find((one) => one.verdict !== 'through' || one.main?.afterHours.value == null);
  if (open !== undefined) {
    const own = open.review.bin.fanIds;
    const fans = sharedFans(fronts.map(({ review }) => review)).filter((id) => own.includes(id));
    const serves = fans.length > 1 ? `Fans ${listed(fans)} also serve` : `Fan ${fans[0]} also serves`;
    const why = `${serves} ${open.review.bin.name}, of which nobody can tell when its front was through: until then the hours were needed.`;
    return { hours: withheld(why), cost: withheld(why), last: null };
  }
  const ends = fronts.map((one) => one.main?.campaign.span.toMs ?? Number.NaN);
  const endMs = Math.min(...ends);
  // Hours after the first campaign's end are after all fronts in one bin's campaign only.
  const after = fronts.map(({ main, review }, i): Estimate => {
    const later = fanHoursBetween(review.fan.spans, endMs, ends[i]);
    const less = (hours: number) => Math.max(0, hours - later);
    const { value, interval } = main?.afterHours ?? withheld('');
    return estimate(less(value ?? 0), less(interval?.[0] ?? 0), less(interval?.[1] ?? 0));
  });
  const least = (pick: (of: Estimate) => number) => Math.min(...after.map(pick));
  const hours = estimate(
    least((of) => of.value ?? 0),
    least((of) => of.interval?.[0] ?? 0),
    least((of) => of.interval?.[1] ?? 0),
  );
  const last = fronts[after.findIndex((of) => of.value === hours.value)];
  return { hours, cost: together(fronts, hours), last };
}

/** Each bin carries its part of a fan's energy: what the hours cost is the sum. */
function together(fronts: readonly SeasonFront[], hours: Estimate): Estimate {
  const parts = fronts.map((front) => ranOnCost(front, hours));
  const lacking = parts.find((of) => of.value === null);
  if (lacking !== undefined) return lacking;
  const sum = (pick: (of: Estimate) => number) => parts.reduce((all, of) => all + pick(of), 0);
  return estimate(
    sum((of) => of.value ?? 0),
    sum((of) => of.interval?.[0] ?? 0),
    sum((of) => of.interval?.[1] ?? 0),
  );
}
