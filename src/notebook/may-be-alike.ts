import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';

/** A bin and a number of it. */
export interface Sized {
  name: string;
  of: Estimate;
}

/** More bins than this are counted in a sentence. */
const NAMED = 3;

const endOf = ({ of }: Sized, end: 0 | 1) => of.interval?.[end] ?? of.value ?? Number.NaN;

/** Those whose interval reaches that of the largest: nobody can say that they had less. */
export function reaching(largest: Sized, others: readonly Sized[]): string[] {
  return others.filter((one) => endOf(one, 1) >= endOf(largest, 0)).map(({ name }) => name);
}

/** Those whose interval reaches down to that of the smallest. */
export function reachingDown(smallest: Sized, others: readonly Sized[]): string[] {
  return others.filter((one) => endOf(one, 0) <= endOf(smallest, 1)).map(({ name }) => name);
}

/** `, though Lane 42 and Road 24 may have lost as much`; nothing where nobody may have. */
export function thoughSaid(names: readonly string[], may: string): string {
  if (names.length === 0) return '';
  return `, though ${names.length <= NAMED ? listed([...names]) : `${names.length} others`} ${may}`;
}
