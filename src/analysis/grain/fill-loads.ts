import type { Ticket } from '../moisture/tickets.ts';
import type { FillTimes } from './fill-times.ts';
import { fitsVolume } from './fits-volume.ts';
import { bareDates, loadsOnce } from './loads-once.ts';
import type { WeightByVolume } from './weight-by-volume.ts';

const DAY_MS = 86_400_000;
/** Loads this long before the bin is first said to hold grain may belong to its filling: a slow harvest, filling by layers. */
const BEFORE_DAYS = 45;
/** Loads this long after it counts as filled: `filled` may be a bare date, a ticket may be dated by the day it was settled. */
const AFTER_DAYS = 7;
/** A filling that goes on: loads that follow within this of the one before. A later one is another lot. */
const GOES_ON_DAYS = 10;

/** The tickets that belong to one filling. */
export interface FillLoads {
  /** each load once; whoever sums or averages takes these */
  in: readonly Ticket[];
  /** taken out again before it was full: cored, turned, moved on */
  out: readonly Ticket[];
  /** rows taken to tell a load a second time; not in `in` */
  doubles: readonly Ticket[];
  /** true: the tickets bear no time of day, and the volume fits only if rows alike are loads of their own; they are in `in` */
  alikeKept: boolean;
  /** the tickets bear no time of day, and no volume bears out that rows alike are one load */
  undecided: boolean;
  /** loads in that are dated out of the filling */
  elsewhere: number;
}

/**
 * The tickets of the bin's filling: from 45 days before the bin is first said to hold grain to 7 days after it is full,
 * and on as long as loads follow each other within 10 days; without any date, all loads in. Of rows alike by a bare date,
 * which may be two loads of that day, the volume decides, and for all that uses the tickets.
 *
 * @param tickets  the bin's, in any order
 * @param volume   what depth and test weight make of the filling; null where no depth is stated, so that rows alike count once
 */
export function fillLoads(
  tickets: readonly Ticket[],
  fill: Pick<FillTimes, 'begunMs' | 'fullMs'>,
  volume: WeightByVolume | null,
): FillLoads {
  const ordered = tickets.filter((one) => !Number.isNaN(one.timeMs)).sort((a, b) => a.timeMs - b.timeMs);
  const opens = fill.begunMs === null ? Number.NEGATIVE_INFINITY : fill.begunMs - BEFORE_DAYS * DAY_MS;
  const closes = fill.fullMs === null ? Number.POSITIVE_INFINITY : fill.fullMs + AFTER_DAYS * DAY_MS;
  const loadsIn = ordered.filter((one) => one.direction === 'in');
  const within: Ticket[] = [];
  for (const one of loadsIn.filter(({ timeMs }) => timeMs >= opens)) {
    const goesOn = within.length > 0 && one.timeMs - within[within.length - 1].timeMs <= GOES_ON_DAYS * DAY_MS;
    if (one.timeMs <= closes || goesOn) within.push(one);
  }
  const lastIn = within.at(-1)?.timeMs ?? Number.NEGATIVE_INFINITY;
  const out = loadsOnce(
    ordered.filter((one) => one.direction === 'out' && one.timeMs >= opens && one.timeMs <= lastIn),
  ).kept;
  const { kept, doubles } = loadsOnce(within);
  const bare = doubles.length > 0 && bareDates(ordered);
  const once = netSum(kept) - netSum(out);
  const onceFits = volume !== null && fitsVolume(once, volume);
  const alikeKept = bare && volume !== null && !onceFits && fitsVolume(once + netSum(doubles), volume);
  return {
    in: alikeKept ? within : kept,
    out,
    doubles: alikeKept ? [] : doubles,
    alikeKept,
    undecided: bare && !onceFits && !alikeKept,
    elsewhere: loadsIn.length - within.length,
  };
}

/** Of all these loads; NaN where one has no weight. */
export function netSum(loads: readonly Ticket[]): number {
  return loads.reduce((total, one) => total + one.netKg, 0);
}
