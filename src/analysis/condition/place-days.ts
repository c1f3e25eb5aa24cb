import { localDayOf, type Zone } from '../../base/zone.ts';
import { DAY_MS } from './outdoor-days.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { sensorJumps } from './sensor-jumps.ts';
import { type StepGrid, stepMiddles } from './step-grid.ts';

/** Temperatures of a bin's places by local day. */
export interface PlaceDays {
  /** local midnights as if UTC, rising and without holes, [days] */
  dayMs: Float64Array;
  /** by place, C, [days]; NaN on days without a reading near or outside the place's stay */
  tempC: readonly Float64Array[];
  /** by place, C, [days]: the same with the days carried between readings taken far apart, and how cold and warm those may have been */
  toldC: readonly Float64Array[];
  lowC: readonly Float64Array[];
  highC: readonly Float64Array[];
  /** by place, [days + 1]: on how many of the days before each it jumped, as no grain that heats by itself does */
  jumpsBefore: readonly Uint16Array[];
}

/** @param tracks  on `grid` */
export function placeDays(tracks: readonly PlaceTrack[], grid: StepGrid, zone: Zone): PlaceDays {
  const days = Float64Array.from(stepMiddles(grid), (ms) => localDayOf(zone, ms) / DAY_MS);
  const first = days[0] ?? 0;
  const count = days.length === 0 ? 0 : days[days.length - 1] - first + 1;
  const dayOf = (step: number) => days[step] - first;
  return {
    dayMs: Float64Array.from({ length: count }, (_, d) => (first + d) * DAY_MS),
    tempC: tracks.map((track) => means(track, track.tempC, (i) => track.seen[i] === 1)),
    toldC: tracks.map((track) => means(track, track.tempC, (i) => isTold(track, i))),
    lowC: tracks.map((track) => means(track, track.lowC, (i) => isTold(track, i))),
    highC: tracks.map((track) => means(track, track.highC, (i) => isTold(track, i))),
    jumpsBefore: tracks.map((track) => {
      const jumped = new Uint8Array(count);
      sensorJumps(track).forEach((jumps, i) => {
        if (jumps === 1) jumped[dayOf(i)] = 1;
      });
      const before = new Uint16Array(count + 1);
      for (let d = 0; d < count; d++) before[d + 1] = before[d] + jumped[d];
      return before;
    }),
  };

  function means({ from, to }: PlaceTrack, tempC: Float64Array, counts: (step: number) => boolean): Float64Array {
    const sum = new Float64Array(count);
    const seen = new Float64Array(count);
    for (let i = from; i < to; i++) {
      if (!counts(i)) continue;
      sum[dayOf(i)] += tempC[i];
      seen[dayOf(i)] += 1;
    }
    return sum.map((one, d) => (seen[d] === 0 ? Number.NaN : one / seen[d]));
  }
}

const isTold = ({ seen, carried }: PlaceTrack, step: number) => seen[step] === 1 || carried[step] === 1;
