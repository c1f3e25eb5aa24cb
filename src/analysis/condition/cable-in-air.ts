import type { PlaceTrack } from './place-tracks.ts';
import { STEPS_A_DAY } from './step-grid.ts';

type Read = Pick<PlaceTrack, 'cable' | 'heightM' | 'tempC' | 'read' | 'from' | 'to'>;

/** So many sensors over so many metres fell alike, and so far: air does that at every height, grain at rest at none but its edges. */
const LEAST_SENSORS = 3;
const LEAST_SPAN_M = 2;
const FALL_K = 2;
const ALIKE_K = 1;
/** Under so many hours of blown air the grain was at rest. */
const MOST_BLOWN_H = 2;
/** For so long before and after such a fall the cable may have hung in air: it does not get colder every week, steps. */
const AROUND = 30 * STEPS_A_DAY;

/**
 * Where a cable read by hand hung in air: between two readings a day and more apart, with the fan at rest, all of its sensors fell by the
 * same. The checks of the log know such cables by their daily swing, which such readings do not have.
 *
 * @param blownH  hours of each step in which a fan ran or may have run, [steps]
 * @returns       by track, [steps] 1 within a month of such a fall
 */
export function cablesInAir(tracks: readonly Read[], blownH: Float64Array): Uint8Array[] {
  const out = tracks.map(({ tempC }) => new Uint8Array(tempC.length));
  for (const cable of new Set(tracks.map((track) => track.cable))) {
    const its = [...tracks.keys()].filter((t) => tracks[t].cable === cable);
    for (const [before, after] of gapsOf(its.map((t) => tracks[t]))) {
      const both = its.map((t) => tracks[t]).filter(({ read }) => read[before] === 1 && read[after] === 1);
      if (!isAlike(both, before, after)) continue;
      if (blownH.subarray(before, after).reduce((sum, one) => sum + one, 0) > MOST_BLOWN_H) continue;
      for (const t of its) out[t].fill(1, Math.max(0, before - AROUND), after + AROUND + 1);
    }
  }
  return out;
}

/** Steps with readings of a cable, each with the next, where these are a day and more apart. */
function gapsOf(tracks: readonly Read[]): [number, number][] {
  const steps = new Set<number>();
  for (const { read } of tracks) for (const [i, one] of read.entries()) if (one === 1) steps.add(i);
  const rising = [...steps].sort((a, b) => a - b);
  return rising.flatMap((step, i): [number, number][] =>
    i > 0 && step - rising[i - 1] >= STEPS_A_DAY ? [[rising[i - 1], step]] : [],
  );
}

function isAlike(tracks: readonly Read[], before: number, after: number): boolean {
  const heights = tracks.map((track) => track.heightM);
  if (tracks.length < LEAST_SENSORS || Math.max(...heights) - Math.min(...heights) < LEAST_SPAN_M) return false;
  const falls = tracks.map(({ tempC }) => tempC[before] - tempC[after]);
  return Math.min(...falls) >= FALL_K && Math.max(...falls) - Math.min(...falls) <= ALIKE_K;
}
