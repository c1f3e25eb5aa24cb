import { instantsOf, type Zone } from '../../base/zone.ts';
import { type Ambiguous, secondPass } from './repeated-hour.ts';
import type { Stamps } from './stamps.ts';

const DAY_MS = 86_400_000;

export interface Resolved {
  /** instants, ms UTC; NaN where there is no stamp, [rows] */
  timeMs: Float64Array;
  /** 1 where the local stamp stands in the hour that spring's change leaves out, [rows] */
  missingHour: Uint8Array;
  /** rows by the autumn change in whose repeated hour they stand (key: the change's later offset day), oldest first */
  repeated: Map<number, Ambiguous[]>;
}

/**
 * Local stamps to instants. In the repeated hour the order decides; a stamp in the missing hour is taken by the offset before the change
 * (as a clock does that was not set forward) and marked.
 *
 * @param descending  the file is written newest first
 */
export function resolveStamps(stamps: Stamps, zone: Zone, descending: boolean): Resolved {
  const rows = stamps.ms.length;
  const timeMs = new Float64Array(rows);
  const missingHour = new Uint8Array(rows);
  const repeated = new Map<number, Ambiguous[]>();
  for (let i = 0; i < rows; i++) {
    const row = descending ? rows - 1 - i : i;
    const ms = stamps.ms[row];
    if (Number.isNaN(ms) || stamps.local[row] === 0) {
      timeMs[row] = ms;
      continue;
    }
    const before = zone.offsetMs(ms - DAY_MS);
    timeMs[row] = ms - before;
    if (before === zone.offsetMs(ms + DAY_MS)) continue;
    const instants = instantsOf(zone, ms);
    if (instants.length === 0) missingHour[row] = 1;
    else timeMs[row] = instants[0];
    if (instants.length > 1 && stamps.series[row] >= 0) {
      const key = Math.floor(ms / DAY_MS);
      const found = repeated.get(key);
      if (found === undefined) repeated.set(key, [{ row, localMs: ms }]);
      else found.push({ row, localMs: ms });
    }
  }
  for (const ambiguous of repeated.values()) {
    for (const row of secondPass(stamps, ambiguous)) timeMs[row] = instantsOf(zone, stamps.ms[row])[1];
  }
  return { timeMs, missingHour, repeated };
}
