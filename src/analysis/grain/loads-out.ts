import type { Ticket } from '../moisture/tickets.ts';
import { dryMatterFits, dryMatterSum } from './dry-matter-fits.ts';
import type { FillLoads } from './fill-loads.ts';
import type { FillTimes } from './fill-times.ts';
import { bareDates, loadsOnce } from './loads-once.ts';

/** Loads out of a full bin. */
export interface LoadsOut {
  /** each load once; whoever sums or averages takes these */
  out: readonly Ticket[];
  /** rows taken to tell a load a second time; not in `out` */
  doubles: readonly Ticket[];
}

/**
 * Each load out once, as loads in are. Of rows alike by a bare date, which may be two loads of that day, the dry matter that came in
 * decides; where nothing tells how many loads that was either, they stay as they stand.
 *
 * @param loads    out, in any order
 * @param filling  of the same bin
 */
export function loadsOut(loads: readonly Ticket[], filling: Pick<FillLoads, 'in' | 'undecided'>): LoadsOut {
  const { kept, doubles } = loadsOnce(loads);
  if (doubles.length === 0 || !bareDates([...filling.in, ...loads])) return { out: kept, doubles };
  const dryIn = dryMatterSum(filling.in);
  const asked = !dryMatterFits(dryMatterSum(kept), dryIn) && dryMatterFits(dryMatterSum(loads), dryIn);
  return filling.undecided || asked ? { out: loads, doubles: [] } : { out: kept, doubles };
}

/** Loads out since the bin was whole for the last time: one before is another season's, or was cored while filling. */
export function outOfFull(tickets: readonly Ticket[], { fullMs }: Pick<FillTimes, 'fullMs'>): Ticket[] {
  const from = fullMs ?? Number.NEGATIVE_INFINITY;
  return tickets.filter((one) => one.direction === 'out' && !(one.timeMs < from));
}
