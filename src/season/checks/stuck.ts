import { cumulativeStdNormalProbability } from 'simple-statistics';
import { STILL } from './fan-state.ts';
import { usualInterval } from './interval.ts';
import { flickerOf, type Run, resolutionOf, sameValueRuns } from './runs.ts';
import { HOUR_MS, type Track, used } from './track.ts';

/** Grain in still air holds a value for days; a run shorter than this is not looked at. */
export const STUCK_MS = 48 * HOUR_MS;
/** Logs every six hours still give twelve readings in three days. */
export const STUCK_READINGS = 12;
/** Both neighbours on the cable moved this far, the same way: 2 K, 0.75 point … */
export const STUCK_MOVED_K = 2;
export const STUCK_MOVED_WB = 0.0075;
/** … and this many of the sensor's own steps, so that a coarse sensor is not blamed. */
export const STUCK_MOVED_STEPS = 10;
/** A run that the sensor's own flicker lets happen less often than this is no chance. */
export const STUCK_CHANCE = 1e-6;
/** A frozen value lets go with a jump that grain does not make within two hours. */
export const STUCK_JUMP_K = 4;
export const STUCK_JUMP_WB = 0.03;
/** Slower logs may step far between readings: there neither flicker nor (slower still) a jump is evidence. */
const STUCK_FLICKER_MS = 3 * HOUR_MS;
const STUCK_JUMP_MS = 2 * HOUR_MS;
/** Frozen together: runs that begin and end within this of each other. */
const TOGETHER_MS = 6 * HOUR_MS;

/** A sensor of a bin as the stuck check sees it. */
export interface StuckInput {
  cable: string;
  heightM: number;
  track: Track;
  /** what the bin's fans did, STILL, MOVING or UNKNOWN, [readings] */
  air: ArrayLike<number>;
}

/** What a sensor could be seen doing. */
interface Seen extends StuckInput {
  runs: Run[];
  resolution: number;
  flicker: number;
  interval: number;
}

/**
 * Runs in which a sensor shows the very same value although it cannot be: both neighbours on its cable moved together,
 * or its own flicker makes the run impossible, or it lets go with a jump in still air.
 *
 * @param sensors  those of one bin, one kind of cell; readings that are flagged already are not in use
 * @param moved    least movement of the neighbours, least jump, in the track's unit
 * @returns        stuck runs by sensor, [sensors]
 */
export function stuckRuns(sensors: readonly StuckInput[], moved: number, jump: number): Run[][] {
  const seen: Seen[] = sensors.map((one) => {
    const runs = sameValueRuns(one.track, STUCK_MS, STUCK_READINGS);
    const resolution = runs.length === 0 ? 0 : resolutionOf(one.track);
    return { ...one, runs, resolution, flicker: 0, interval: usualInterval(one.track.timeMs) };
  });
  for (const one of seen) if (one.runs.length > 0) one.flicker = flickerOf(one.track, one.resolution, one.runs);
  return seen.map((one) =>
    one.runs.filter(
      (run) =>
        neighboursMoved(one, run, seen, moved) || flickerMissing(one, run, seen) || letsGoWithJump(one, run, jump),
    ),
  );
}

/** Both next sensors of the cable moved the same way, at the same time, while this one stood. */
function neighboursMoved(one: Seen, run: Run, all: readonly Seen[], moved: number): boolean {
  const need = Math.max(moved, STUCK_MOVED_STEPS * one.resolution);
  const below = nextOn(one, run, all, -1);
  const above = nextOn(one, run, all, 1);
  return below !== null && above !== null && commonMovement(below.track, above.track, run) >= need;
}

/** The next sensor on the cable, down (-1) or up (1), that was not itself in a run at the time. */
function nextOn(one: Seen, run: Run, all: readonly Seen[], way: number): Seen | null {
  let best: Seen | null = null;
  for (const other of all) {
    if (other.cable !== one.cable || (other.heightM - one.heightM) * way <= 0) continue;
    if (other.runs.some((theirs) => theirs.fromMs <= run.fromMs && theirs.toMs >= run.toMs)) continue;
    if (best === null || Math.abs(other.heightM - one.heightM) < Math.abs(best.heightM - one.heightM)) best = other;
  }
  return best;
}

/** The range of what two tracks do together within a run: at each time the lesser of two changes that go the same way. */
function commonMovement(a: Track, b: Track, run: { fromMs: number; toMs: number }): number {
  const inA = within(a, run);
  const inB = within(b, run);
  if (inA.length < 4 || inB.length < 4) return 0;
  const startA = firstLevel(a, inA);
  const startB = firstLevel(b, inB);
  const shared: number[] = [];
  let j = 0;
  for (const i of inA) {
    while (j + 1 < inB.length && b.timeMs[inB[j + 1]] <= a.timeMs[i]) j += 1;
    const changeA = a.values[i] - startA;
    const changeB = b.values[inB[j]] - startB;
    shared.push(changeA * changeB > 0 ? Math.sign(changeA) * Math.min(Math.abs(changeA), Math.abs(changeB)) : 0);
  }
  shared.sort((x, y) => x - y);
  // A twentieth off either end: one odd reading is no movement.
  const cut = Math.floor(shared.length / 20);
  return shared[shared.length - 1 - cut] - shared[cut];
}

function firstLevel(track: Track, at: readonly number[]): number {
  const first = at.slice(0, 3).map((i) => track.values[i]);
  return first.sort((x, y) => x - y)[first.length >> 1];
}

function within(track: Track, run: { fromMs: number; toMs: number }): number[] {
  const out: number[] = [];
  let low = 0;
  let high = track.timeMs.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (track.timeMs[mid] < run.fromMs) low = mid + 1;
    else high = mid;
  }
  for (let i = low; i < track.timeMs.length && track.timeMs[i] <= run.toMs; i++) if (track.use[i]) out.push(i);
  return out;
}

/** The sensor flickers elsewhere, its fellows flicker meanwhile, and this run shows none of it. */
function flickerMissing(one: Seen, run: Run, all: readonly Seen[]): boolean {
  if (!(one.interval <= STUCK_FLICKER_MS) || one.flicker === 0) return false;
  // Most likely case for a repeat: the truth stands still in the middle of a step.
  const half = (0.5 * one.resolution) / one.flicker;
  const repeat = 2 * cumulativeStdNormalProbability(half) - 1;
  if (repeat ** run.readings >= STUCK_CHANCE) return false;
  const shares: number[] = [];
  for (const other of all) {
    if (other === one) continue;
    const together = other.runs.some(
      (theirs) =>
        Math.abs(theirs.fromMs - run.fromMs) <= TOGETHER_MS && Math.abs(theirs.toMs - run.toMs) <= TOGETHER_MS,
    );
    if (!together) shares.push(repeatShare(other.track, run));
  }
  const fellows = shares.filter((share) => share >= 0).sort((a, b) => a - b);
  if (fellows.length === 0) return true;
  return fellows[Math.floor(0.75 * (fellows.length - 1))] ** run.readings < STUCK_CHANCE;
}

/** Share of a track's readings within a span that repeat the one before; -1 where there are too few to say. */
function repeatShare(track: Track, run: { fromMs: number; toMs: number }): number {
  const at = within(track, run);
  if (at.length < STUCK_READINGS) return -1;
  let same = 0;
  for (let k = 1; k < at.length; k++) if (Math.abs(track.values[at[k]] - track.values[at[k - 1]]) < 1e-7) same += 1;
  return (same + 1) / (at.length + 1);
}

/** The value after (or before) the run is far off, one reading on. */
function letsGoWithJump(one: Seen, run: Run, jump: number): boolean {
  if (!(one.interval <= STUCK_JUMP_MS)) return false;
  const need = Math.max(jump, STUCK_MOVED_STEPS * one.resolution);
  const at = used(one.track);
  const k = at.indexOf(run.last);
  if (k < 0 || k + 3 >= at.length) return false;
  const { timeMs, values } = one.track;
  if (timeMs[at[k + 1]] - run.toMs > STUCK_JUMP_MS) return false;
  // A fan that starts moves the grain over the floor that fast.
  for (let i = run.last; i <= at[k + 3]; i++) if (one.air[i] !== STILL) return false;
  // It must stay there: all of the next three.
  return [1, 2, 3].every((ahead) => Math.abs(values[at[k + ahead]] - run.value) >= need);
}
