import { type Isotherm, isothermOf, isothermsOf } from '../../grain/isotherm.ts';
import type { Bin } from '../../season/season.ts';

/** Sets that nothing outside their own source bears out are no interval: some lie points off. */
const UNCONFIRMED = /^(none|low|in conflict)/;

/** The isotherm by which a bin's hours are classed, and the others in use for its crop, by which the answer is spanned. */
export function isothermsInUse({ crop, isotherm }: Pick<Bin['grain'], 'crop' | 'isotherm'>): {
  main: Isotherm;
  others: readonly Isotherm[];
} {
  const main = isothermOf(crop, isotherm ?? undefined);
  const others = isothermsOf(crop).filter((one) => one.name !== main.name && !UNCONFIRMED.test(one.confirmation));
  return { main, others };
}
