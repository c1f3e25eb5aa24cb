import type { BinReview } from '../analysis/types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';
import { groupedCount } from '../base/grouped-count.ts';
import type { KeyNumber } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';

/** `1 bin`, `3 bins`, `no bins`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  if (count === 0) return `no ${many}`;
  return `${groupedCount(count)} ${count === 1 ? one : many}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A title among words: rules' titles hold commas. */
export function quoted(title: string): string {
  return `“${title}”`;
}

/** Ends a reason as a sentence. */
export function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** The estimate if it has a value, else null: to filter by. */
export function known(of: Estimate): (Estimate & { value: number }) | null {
  return of.value === null ? null : (of as Estimate & { value: number });
}

/** A sum over bins, of those that are known. */
export interface KnownTotal {
  total: Estimate;
  /** `4 of 6 bins`; null when all are known */
  of: string | null;
}

/**
 * The sum of what is known, with its interval and how many bins are in it; withheld when none is. The parts' errors are
 * taken as going the same way (one kind of meter, one bill), which makes the widest honest interval.
 */
export function knownTotal(parts: readonly Estimate[]): KnownTotal {
  const told = parts.map(known).filter((part) => part !== null);
  if (told.length === 0) return { total: withheld(parts[0]?.why ?? 'There is no bin.'), of: null };
  const end = (at: 0 | 1) => told.reduce((sum, part) => sum + (part.interval?.[at] ?? part.value), 0);
  const value = told.reduce((sum, part) => sum + part.value, 0);
  const total = {
    value,
    interval: told.some((part) => part.interval !== null) ? ([end(0), end(1)] as [number, number]) : null,
    why: null,
  };
  return { total, of: told.length === parts.length ? null : `${told.length} of ${counted(parts.length, 'bin')}` };
}

/** A total as key number: which bins are in it stands beside. */
export function totalKey(label: string, quantity: Quantity, { total, of }: KnownTotal): KeyNumber {
  return { label, quantity, amount: total, note: of ?? undefined };
}

/** `lost 2.3 points (2.0 to 2.6)`, or `took up …` where the points removed are negative. */
export function changeSaid(points: Estimate & { value: number }, units: Units): string {
  if (points.value >= 0) return `lost ${units.say('points', points)}`;
  const interval: [number, number] | null =
    points.interval === null ? null : [-points.interval[1], -points.interval[0]];
  return `took up ${units.say('points', { ...points, value: -points.value, interval })}`;
}

/** `Your fans ran 2,990 h (…) and cost 5,130 USD (…)`, each with the bins it is known of. */
export function fansSaid(hours: KnownTotal, cost: KnownTotal, units: Units): string {
  if (hours.total.value === null && cost.total.value === null)
    return 'Can’t tell how long the fans ran or what they cost';
  const within = ({ of }: KnownTotal) => (of === null ? '' : ` in ${of}`);
  const ran =
    hours.total.value === null
      ? 'Can’t tell how long the fans ran'
      : `Your fans ran ${units.say('hours', hours.total)}`;
  if (cost.total.value === null) return `${ran}${within(hours)}; what they cost can’t be told`;
  const spent = `${hours.total.value === null ? 'they cost' : 'cost'} ${units.say('money', cost.total)}`;
  if (hours.of === cost.of) return `${ran} and ${spent}${within(cost)}`;
  return `${ran}${within(hours)} and ${spent}${within(cost)}`;
}

/** Bins that broke, as warnings. */
export function brokenBins(bins: readonly BinReview[]): string[] {
  return bins
    .filter((one) => one.failure !== null)
    .map((one) => `${one.bin.name} could not be worked out whole: ${sentence(one.failure ?? '')}`);
}
