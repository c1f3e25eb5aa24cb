import type { GrainAge } from '../analysis/condition/condition-types.ts';
import { counted } from './words.ts';

/** Whether all grain of a bin kept within its storage time, as far as the intervals of its places bear it. */
export type Kept = 'yes' | 'no' | 'not sure';

/** By every place, not by the one that used most in the middle: another may reach farther. */
export function hasKept({ places, worstLifeUsed }: Pick<GrainAge, 'places' | 'worstLifeUsed'>): Kept {
  const all = [worstLifeUsed, ...places.map(({ lifeUsed }) => lifeUsed)].map(
    ({ value, interval }) => interval ?? [value ?? Number.NaN, value ?? Number.NaN],
  );
  if (all.some(([low]) => low >= 1)) return 'no';
  return all.every(([, high]) => high < 1) ? 'yes' : 'not sure';
}

const KEPT = 'all grain kept within its storage time';

/** In how many bins the grain kept, of those that can be told. @param told  at least one */
export function keptSaid(told: readonly Kept[], all: number): string {
  if (told.length === 1) {
    const said = { yes: KEPT, no: `not ${KEPT}`, 'not sure': `it is not sure that ${KEPT}` }[told[0]];
    return `In the only bin of ${all} that can be told ${said}`;
  }
  const of = told.length === all ? counted(all, 'bin') : `the ${counted(told.length, 'bin')} that can be told`;
  const count = (how: Kept) => told.filter((one) => one === how).length;
  if (count('yes') === told.length) {
    return `In ${told.length < all ? `all of ${of}` : told.length === 2 ? 'both bins' : `all ${of}`} ${KEPT}`;
  }
  if (count('no') === told.length) return `In none of ${of} did all grain keep within its storage time`;
  if (count('not sure') === told.length) return `In none of ${of} is it sure that ${KEPT}`;
  const unsure = count('not sure') > 0 ? `, in ${count('not sure')} that is not sure` : '';
  if (count('yes') === 0) return `In ${count('no')} of ${of} not ${KEPT}${unsure}`;
  return `In ${count('yes')} of ${of} ${KEPT}${unsure}${count('no') > 0 ? `, in ${count('no')} it did not` : ''}`;
}
