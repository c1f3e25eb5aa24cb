import { median } from '../../base/stats/quantile.ts';
import { quantileOf } from './interval.ts';
import { HOUR_MS, type Track, used } from './track.ts';

/** A file that says one scale while the logger wrote the other. */
export interface UnitMistake {
  /** what the file says, what was logged */
  said: 'degF' | 'degC';
  logged: 'degF' | 'degC';
  /** what is read in SI as the truth in SI */
  truth: (readC: number) => number;
}

export const UNIT_MISTAKES: readonly UnitMistake[] = [
  { said: 'degF', logged: 'degC', truth: (readC) => readC * 1.8 + 32 },
  { said: 'degC', logged: 'degF', truth: (readC) => (readC - 32) / 1.8 },
];

/** Least jump by which the scale changes: at any temperature of grain above -20 C it is more. */
export const UNIT_JUMP_K = 8;
/** What is left of the jump when the other scale is read, at most: this, or this share of it. */
export const UNIT_JOIN_K = 3;
const UNIT_JOIN_SHARE = 0.2;
/** Fewer readings than this are called a spike. */
export const UNIT_READINGS = 6;
/** Grain that the other scale makes hotter than this for a tenth of a stretch is none, C: its jump is another's, as of a sensor that comes out of the grain. */
export const UNIT_HOTTEST_C = 50;
/** Share of a cable's sensors that must show it at once: a scale is set for a logger, not for one sensor. */
export const UNIT_SENSORS = 1 / 2;

/** Steps up to this, or up to this many times what nineteen in twenty of the sensor's steps keep, are weather or a front and cost nothing. */
const FREE_K = 4;
const FREE_TIMES_USUAL = 1.5;
const FREE_ACROSS_HOLE_K = 10;
const HOLE_MS = 12 * HOUR_MS;
const DEAREST_K = 30;
const SWITCH_K = 2;

/** Readings at either side of an end that make its level, and that must join. */
const LEVEL_READINGS = 9;
const JOIN_READINGS = 3;

/** Positions of the track, both inclusive. */
export interface Stretch {
  first: number;
  last: number;
}

/**
 * Stretches in which reading the other scale makes a sensor's record whole: the cheapest path through two states (as
 * said, as mistaken) by the jumps that remain, each stretch then proved at its ends.
 */
export function unitStretches(track: Track, mistake: UnitMistake): Stretch[] {
  const at = used(track);
  if (at.length < 2 * UNIT_READINGS) return [];
  const { timeMs, values } = track;
  const truth = (i: number) => mistake.truth(values[i]);
  const steps = Float64Array.from({ length: at.length - 1 }, (_, k) => Math.abs(values[at[k + 1]] - values[at[k]]));
  const stretched = Math.max(1, mistake.truth(1) - mistake.truth(0));
  const usual = stretched * quantileOf(steps.sort(), 0.95);
  const freeStep = Math.max(FREE_K, FREE_TIMES_USUAL * usual);
  const from = new Uint8Array(at.length * 2);
  let said = 0;
  let wrong = 0;
  for (let k = 1; k < at.length; k++) {
    const a = at[k - 1];
    const b = at[k];
    const free = timeMs[b] - timeMs[a] > HOLE_MS ? Math.max(FREE_ACROSS_HOLE_K, freeStep) : freeStep;
    const stay = cost(values[b] - values[a], free);
    const stayWrong = cost(truth(b) - truth(a), free);
    const goWrong = cost(truth(b) - values[a], free) + SWITCH_K;
    const goBack = cost(values[b] - truth(a), free) + SWITCH_K;
    const toSaid = [said + stay, wrong + goBack];
    const toWrong = [said + goWrong, wrong + stayWrong];
    from[2 * k] = toSaid[1] < toSaid[0] ? 1 : 0;
    from[2 * k + 1] = toWrong[1] < toWrong[0] ? 1 : 0;
    said = Math.min(...(toSaid as [number, number]));
    // The word of the file counts where nothing speaks against it.
    wrong = Math.min(...(toWrong as [number, number])) + 1e-3;
  }
  const state = new Uint8Array(at.length);
  state[at.length - 1] = wrong < said ? 1 : 0;
  for (let k = at.length - 1; k > 0; k--) state[k - 1] = from[2 * k + state[k]];
  return stretchesOf(state)
    .filter(([first, last]) => last - first + 1 >= UNIT_READINGS)
    .filter(([first, last]) => {
      const read = Float64Array.from(at.subarray(first, last + 1), truth).sort();
      return quantileOf(read, 0.9) <= UNIT_HOTTEST_C;
    })
    .filter(([first, last]) => proved(track, mistake, at, first, true) || proved(track, mistake, at, last, false))
    .map(([first, last]) => ({ first: at[first], last: at[last] }));
}

/** The ends of a stretch at which its track shows the jump: one at least. */
export function provedEnds(track: Track, mistake: UnitMistake, { first, last }: Stretch): ('first' | 'last')[] {
  const at = used(track);
  return [
    ...(proved(track, mistake, at, at.indexOf(first), true) ? (['first'] as const) : []),
    ...(proved(track, mistake, at, at.indexOf(last), false) ? (['last'] as const) : []),
  ];
}

function cost(stepK: number, freeK: number): number {
  return Math.min(DEAREST_K, Math.max(0, Math.abs(stepK) - freeK));
}

function stretchesOf(state: Uint8Array): [number, number][] {
  const out: [number, number][] = [];
  for (let k = 0; k < state.length; k++) {
    if (state[k] === 0) continue;
    const first = k;
    while (k + 1 < state.length && state[k + 1] === 1) k += 1;
    out.push([first, k]);
  }
  return out;
}

/** At an end of a stretch: read as said there is a jump, read the other way there is none. */
function proved(track: Track, mistake: UnitMistake, at: Int32Array, end: number, isFirst: boolean): boolean {
  const level = (start: number, stop: number) =>
    median(Array.from(at.subarray(Math.max(0, start), Math.max(0, stop)), (i) => track.values[i]));
  const inside = (readings: number) => (isFirst ? level(end, end + readings) : level(end + 1 - readings, end + 1));
  const outside = (readings: number) => (isFirst ? level(end - readings, end) : level(end + 1, end + 1 + readings));
  // A spike beside the end is no level: the jump is taken over more readings than a spike may last, the join close by.
  const jump = Math.abs(inside(LEVEL_READINGS) - outside(LEVEL_READINGS));
  const left = Math.abs(mistake.truth(inside(JOIN_READINGS)) - outside(JOIN_READINGS));
  return jump >= UNIT_JUMP_K && left <= Math.max(UNIT_JOIN_K, UNIT_JOIN_SHARE * jump);
}
