import type { Bin } from '../../season/season.ts';

/** Bins that share fans, each group in the order of the bins; a bin with fans of its own, or with none, is a group by itself. */
export function fanGroups<T extends { bin: Pick<Bin, 'fanIds'> }>(bins: readonly T[]): T[][] {
  const groups: T[][] = [];
  for (const one of bins) {
    const shares = (group: T[]) => group.some(({ bin }) => bin.fanIds.some((id) => one.bin.fanIds.includes(id)));
    const joined = groups.filter(shares);
    const rest = groups.filter((group) => !joined.includes(group));
    groups.splice(0, groups.length, ...rest, [...joined.flat(), one]);
  }
  const place = new Map(bins.map((one, i) => [one, i]));
  const at = (one: T) => place.get(one) ?? 0;
  for (const group of groups) group.sort((a, b) => at(a) - at(b));
  return groups.sort((a, b) => at(a[0]) - at(b[0]));
}

/** Of the bins those, others than `some`, that a fan of these serves too. */
export function onTheirFans<T extends { bin: Pick<Bin, 'id' | 'fanIds'> }>(
  some: readonly { bin: Pick<Bin, 'id' | 'fanIds'> }[],
  bins: readonly T[],
): T[] {
  const own = new Set(some.map(({ bin }) => bin.id));
  const fans = new Set(some.flatMap(({ bin }) => bin.fanIds));
  return bins.filter(({ bin }) => !own.has(bin.id) && bin.fanIds.some((id) => fans.has(id)));
}

/** Fans that several of the bins are stated under. */
export function sharedFans(bins: readonly { bin: Pick<Bin, 'fanIds'> }[]): string[] {
  const all = bins.flatMap(({ bin }) => [...new Set(bin.fanIds)]);
  return [...new Set(all.filter((id, i) => all.indexOf(id) !== i))];
}
