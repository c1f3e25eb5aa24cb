import { MOVING, STILL } from './fan-state.ts';
import { HOUR_MS } from './track.ts';

/** Time zones lie at most so far apart; a daily rhythm looks the same 24 hours on. */
export const CLOCK_MOST_HOURS = 14;
/** Readings that must fit neither as logged; fewer are starts, stops and draughts. */
export const CLOCK_MISFITS = 24;
/** Share of those misfits that the shift may leave: a zone with daylight saving is an hour off for half of the year. */
export const CLOCK_LEFT_SHARE = 0.4;
/** Any shift that is not next to the best must leave this many times its misfits. */
export const CLOCK_CLEAR_TIMES = 1.5;

/** About a start or stop of the fan either is right: logs are sampled, and a plenum takes a while. */
export const CLOCK_EDGE_MS = 0.25 * HOUR_MS;
/** Shifts whose shares of misfits lie so near are alike. */
export const CLOCK_ALIKE_SHARE = 0.002;

/** Starts and stops fit one shift clearly better than another where it leaves this share of their misfits. */
export const CLOCK_SHARP_SHARE = 0.2;

/** How many readings of the plenum a log of fans contradicts as it stands, and shifted. */
export interface ClockShift {
  /** to be added to the fan log's stamps, h; never 0 */
  hours: number;
  readings: number;
  misfits: number;
  misfitsShifted: number;
}

/**
 * Whether a fan log fits the plenum's pressure clearly better when all of its stamps are moved by whole hours.
 *
 * @param timeMs  of the plenum's readings, rising, [readings]
 * @param high    1 where the pressure shows a fan at work, else 0, [readings]
 * @param stateAt the fans' state at given times, rising, as their log is stamped: STILL, MOVING or else unknown
 * @returns null where it fits as it stands, or no shift is clearly better
 */
export function clockShift(
  timeMs: Float64Array,
  high: Uint8Array,
  stateAt: (times: Float64Array) => Uint8Array,
): ClockShift | null {
  const misfitsAt = (hours: number, edgeMs = CLOCK_EDGE_MS) => {
    const [state, after] = [-edgeMs, edgeMs].map((edge) => stateAt(timeMs.map((ms) => ms - hours * HOUR_MS + edge)));
    let known = 0;
    let misfits = 0;
    for (let i = 0; i < state.length; i++) {
      if (state[i] !== after[i] || (state[i] !== MOVING && state[i] !== STILL)) continue;
      known += 1;
      if ((state[i] === MOVING) !== (high[i] === 1)) misfits += 1;
    }
    return { hours, known, misfits, share: known === 0 ? 1 : misfits / known };
  };
  const stands = misfitsAt(0);
  if (stands.misfits < CLOCK_MISFITS) return null;
  const all = Array.from({ length: 2 * CLOCK_MOST_HOURS + 1 }, (_, i) => misfitsAt(i - CLOCK_MOST_HOURS));
  // A log shifted out of the plenum's time tells nothing.
  const told = all.filter((one) => one.known > 0.9 * stands.known);
  const least = Math.min(...told.map((one) => one.share));
  // Readings by the hour tell neighbouring hours hardly apart: of those alike the one that the starts and stops themselves
  // clearly fit, else the smaller shift.
  const alike = told.filter((one) => one.share <= least + CLOCK_ALIKE_SHARE);
  const small = alike.reduce((one, next) => (Math.abs(next.hours) < Math.abs(one.hours) ? next : one));
  const exact = (one: { hours: number }) => misfitsAt(one.hours, 0).misfits;
  const fits = alike.reduce((one, next) => (exact(next) < exact(one) ? next : one), small);
  const best = exact(fits) <= CLOCK_SHARP_SHARE * exact(small) ? fits : small;
  if (best.hours === 0 || best.share > CLOCK_LEFT_SHARE * stands.share) return null;
  const rivals = told.filter(({ hours }) => Math.abs(hours - best.hours) > 1 && Math.abs(hours - best.hours) < 23);
  if (rivals.some((one) => one.share < CLOCK_CLEAR_TIMES * best.share || one.share === 0)) return null;
  return { hours: best.hours, readings: stands.known, misfits: stands.misfits, misfitsShifted: best.misfits };
}
