import { instantsOf, toLocalMs, type Zone } from '../../base/zone.ts';

const DAY_MS = 86_400_000;

/** The local calendar year of an instant. */
export function localYear(zone: Zone, utcMs: number): number {
  return new Date(toLocalMs(zone, utcMs)).getUTCFullYear();
}

/**
 * The instant at which the local calendar and clock of another year read the same. 29 February is 28 February in a year
 * without it. A time that spring's change leaves out is the moment of the change; of one that autumn repeats the first counts.
 *
 * @param utcMs  ms UTC
 * @param years  so many years later; below 0 earlier
 * @returns      ms UTC
 */
export function carryDate(zone: Zone, utcMs: number, years: number): number {
  const localMs = toLocalMs(zone, utcMs);
  const local = new Date(localMs);
  const year = local.getUTCFullYear() + years;
  const month = local.getUTCMonth();
  const lastDay = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  const wanted =
    Date.UTC(year, month, Math.min(local.getUTCDate(), lastDay)) + (((localMs % DAY_MS) + DAY_MS) % DAY_MS);
  const found = instantsOf(zone, wanted);
  if (found.length > 0) return found[0];
  // The clock jumps over it: the moment of the jump is where the later offset takes over.
  const before = zone.offsetMs(wanted - DAY_MS);
  const quarter = 900_000;
  let jump = Math.floor((wanted - before) / quarter) * quarter;
  while (zone.offsetMs(jump - quarter) !== before) jump -= quarter;
  return jump;
}
