import { toLocalMs, type Zone } from '../../base/zone.ts';
import { DAY_MS } from './outdoor-days.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { type StepGrid, stepMiddles } from './step-grid.ts';

/** Temperatures of a bin's places by local day. */
export interface PlaceDays {
  /** local midnights as if UTC, rising and without holes, [days] */
  dayMs: Float64Array;
  /** by place, C, [days]; NaN on days without a reading near or outside the place's stay */
  tempC: readonly Float64Array[];
}

/** @param tracks  on `grid` */
export function placeDays(tracks: readonly PlaceTrack[], grid: StepGrid, zone: Zone): PlaceDays {
  const days = Float64Array.from(stepMiddles(grid), (ms) => Math.floor(toLocalMs(zone, ms) / DAY_MS));
  const first = days[0] ?? 0;
  const count = days.length === 0 ? 0 : days[days.length - 1] - first + 1;
  return {
    dayMs: Float64Array.from({ length: count }, (_, d) => (first + d) * DAY_MS),
    tempC: tracks.map((track) => {
      const sum = new Float64Array(count);
      const seen = new Float64Array(count);
      for (let i = track.from; i < track.to; i++) {
        if (track.seen[i] === 0) continue;
        sum[days[i] - first] += track.tempC[i];
        seen[days[i] - first] += 1;
      }
      return sum.map((one, d) => (seen[d] === 0 ? Number.NaN : one / seen[d]));
    }),
  };
}
