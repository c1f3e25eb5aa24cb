import type { Zone } from '../../base/zone.ts';
import { onThroughout } from '../fan/spans.ts';
import { FAN_ON, type Span } from '../types.ts';
import { type HourPieces, hourPieces } from './hour-pieces.ts';
import { sumWhere } from './hour-sums.ts';

/** Fan hours of which a meter tells how many, but not when, within each of some stretches. */
export interface Untimed {
  /** [pieces on], 1 where the moment is not known */
  on: Uint8Array;
  stretches: readonly Span[];
}

/**
 * How many of the untimed hours each part of the day may hold at most, wherever in their stretches they lay.
 *
 * @param partOf  of a moment, ms UTC
 * @returns       h by part
 */
export function mostByPart(
  on: HourPieces,
  untimed: Untimed,
  zone: Zone,
  partOf: (ms: number) => string,
): Map<string, number> {
  const most = new Map<string, number>();
  for (const { fromMs, toMs } of untimed.stretches) {
    const ran = sumWhere(on, (i) => untimed.on[i] === 1 && on.midMs[i] >= fromMs && on.midMs[i] < toMs);
    const clock = new Map<string, number>();
    const pieces = hourPieces(onThroughout({ fromMs, toMs }), FAN_ON, zone);
    pieces.midMs.forEach((ms, i) => {
      const part = partOf(ms);
      clock.set(part, (clock.get(part) ?? 0) + pieces.hours[i]);
    });
    for (const [part, hours] of clock) most.set(part, (most.get(part) ?? 0) + Math.min(ran, hours));
  }
  return most;
}
