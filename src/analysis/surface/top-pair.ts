import type { PlaceTrack } from '../condition/place-tracks.ts';
import { STEPS_A_DAY } from '../condition/step-grid.ts';
import type { RestReadings } from './surface-distance.ts';

/** The two sensors of a cable that tell where the grain ends, and what they read at rest. */
export interface TopPair {
  topM: number;
  gapM: number;
  rests: RestReadings[];
}

/** A stretch cut short by holes, steps. */
const LEAST_STEPS = 10 * STEPS_A_DAY;
/** A sensor that failed early tells less than the next below it: under so much of the readings of the one with most. */
const LEAST_PART = 1 / 3;

/**
 * The highest sensor of a cable that was read through the rests, and the one below it that leaves most of its readings: where sensors failed,
 * the next lower ones.
 *
 * @param own  sensors of one cable in the grain
 * @returns    null where no two of them were read through ten days of rest
 */
export function topPair(
  own: readonly PlaceTrack[],
  outdoorC: Float64Array,
  stretches: readonly (readonly [from: number, to: number])[],
): TopPair | null {
  const down = [...own].sort((a, b) => b.heightM - a.heightM);
  const pairs = down.map((top) => {
    const belows = down.filter((below) => below.heightM < top.heightM);
    const tried = belows.map((below) => {
      const rests = stretches.flatMap((stretch) => readingsOf(top, below, outdoorC, stretch));
      return { topM: top.heightM, gapM: top.heightM - below.heightM, rests, read: readCount(rests) };
    });
    return tried.reduce<(typeof tried)[number] | null>(
      (most, one) => (one.read > (most?.read ?? 0) ? one : most),
      null,
    );
  });
  const most = Math.max(...pairs.map((one) => one?.read ?? 0));
  return pairs.find((one) => one !== null && one.read >= LEAST_PART * most) ?? null;
}

function readCount(rests: readonly RestReadings[]): number {
  return rests.reduce((sum, { topC }) => sum + topC.filter((value) => !Number.isNaN(value)).length, 0);
}

/** The pieces of a stretch through which the sensor below tells and the weather is known: holes cut it. */
function readingsOf(
  top: PlaceTrack,
  below: PlaceTrack,
  outdoorC: Float64Array,
  [from, to]: readonly [from: number, to: number],
): RestReadings[] {
  const out: RestReadings[] = [];
  const end = Math.min(to, top.to, below.to);
  let start = Math.max(from, top.from, below.from);
  for (let step = start; step <= end; step++) {
    if (step < end && below.seen[step] === 1 && !Number.isNaN(outdoorC[step])) continue;
    if (step - start >= LEAST_STEPS) {
      out.push({
        topC: top.tempC.slice(start, step).map((value, i) => (top.read[start + i] === 1 ? value : Number.NaN)),
        belowC: below.tempC.slice(start, step),
        outdoorC: outdoorC.slice(start, step),
      });
    }
    start = step + 1;
  }
  return out;
}
