import { fanGroups, sharedFans } from '../analysis/energy/fan-groups.ts';
import { hoursTogether } from '../analysis/energy/hours-together.ts';
import type { BinReview } from '../analysis/types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { KeyNumber } from '../report/page.ts';
import { counted, type KnownTotal, knownTotal } from './words.ts';

/** A sum over groups of bins that share fans, one estimate a group; how many bins are in it stands beside. */
export function totalOfGroups(groups: readonly (readonly unknown[])[], parts: readonly Estimate[]): KnownTotal {
  const { total, of } = knownTotal(parts);
  const bins = (some: typeof groups) => some.reduce((sum, group) => sum + group.length, 0);
  const told = groups.filter((_, g) => parts[g].value !== null);
  return { total, of: of === null ? null : `${bins(told)} of ${counted(bins(groups), 'bin')}` };
}

/** Fan hours of all bins, those of a fan that several bins share once; how many bins' are known stands beside. */
export function fanHoursTotal(bins: readonly BinReview[]): KnownTotal {
  const { total } = knownTotal(fanGroups(bins).map((group) => hoursTogether(group).hours));
  return { total, of: knownTotal(bins.map(({ fan }) => fan.hours)).of };
}

/** Hours of the same fans that no log tells; withheld where no bin's hours are known. */
export function unknownHoursTotal(bins: readonly BinReview[]): Estimate {
  const told = fanGroups(bins).flatMap((group) => hoursTogether(group).unknownHours ?? []);
  if (told.length === 0) return withheld(bins[0]?.fan.hours.why ?? 'There is no bin.');
  return { value: told.reduce((sum, hours) => sum + hours, 0), interval: null, why: null };
}

/** The same as key number. @param of  `4 of 6 bins`, of those whose hours are known */
export function unknownHoursKey(amount: Estimate, of: string | null): KeyNumber {
  return { label: 'Hours not known', quantity: 'hours', amount, known: 'counted', note: of ?? undefined };
}

/** `Fan FS serves Twin north and Twin south`, a sentence without its end for each group of bins that share fans. */
export function sharedFansSaid(bins: readonly BinReview[]): string[] {
  return fanGroups(bins).flatMap((group) => {
    const ids = sharedFans(group);
    if (ids.length === 0) return [];
    const names = listed(group.map(({ bin }) => bin.name));
    return [ids.length === 1 ? `Fan ${ids[0]} serves ${names}` : `Fans ${listed(ids)} serve ${names} between them`];
  });
}

/** Beside a table of bins whose total counts a shared fan once. */
export function sharedHoursNotes(bins: readonly BinReview[]): string[] {
  const told = fanGroups(bins).filter((group) => group.some(({ fan }) => fan.hours.value !== null));
  return told
    .flatMap(sharedFansSaid)
    .map(
      (said) =>
        `${said}: each bin has its full hours and an equal part of its energy and cost; the total counts its hours once.`,
    );
}

/** Beside rules that were run bin by bin: of a shared fan no bin has a rule of its own. */
export function sharedRuleNotes(bins: readonly BinReview[]): string[] {
  return sharedFansSaid(bins).map(
    (said) =>
      `${said}, and what it is run for one it does to the other. Each of them is run here as if it had the fan to itself: no rule for it can be taken from one bin alone.`,
  );
}
