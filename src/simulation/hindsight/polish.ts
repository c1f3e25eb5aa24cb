import type { Limits } from './limits.ts';
import { newStanding, type Replay } from './replay.ts';
import { isSpent, shortfall } from './shortfall.ts';

/** A schedule by the hour. */
export interface Schedule {
  /** 0: off, 1: fan, 2: fan and heater, [hours] */
  ways: Uint8Array;
  cost: number;
  /** 0: all limits are kept */
  shortfall: number;
}

/** States kept on the way, so that a change late in the season need not be played from its beginning. */
const KEEP_EVERY = 24;
/** Pieces before and after into which one may move: within a day by its hours, and to the same hours of the days beside. */
const NEIGHBOURS = [-1, 1, -2, 2, -3, 3, -4, 4, -8, 8];

/**
 * Better a schedule by small changes until none helps or `rounds` are over: add hours while something is still to go; leave out the hours of a piece of running or
 * their heat, move them into rests nearby, shorten runs by an hour at either end. A change stays where the limits are kept as well as before
 * at a lower cost (or better where they were not).
 *
 * @param pieceHours  hours that are left out or moved together
 * @param goOn        asked before each change; once false the schedule stays as it has become
 */
export function polish<State>(
  replay: Replay<State>,
  limits: Limits,
  schedule: Schedule,
  { pieceHours, rounds, goOn }: { pieceHours: number; rounds: number; goOn: () => boolean },
): Schedule {
  const { hours } = replay;
  const standing = newStanding();
  const states = Array.from({ length: Math.ceil(hours / KEEP_EVERY) }, () => replay.newState());
  const best: Schedule = { ...schedule, ways: schedule.ways.slice() };
  const tried = best.ways.slice();
  const keepFrom = (hour: number, ways: Uint8Array) => {
    const from = Math.floor(hour / KEEP_EVERY);
    replay.restore(states[from]);
    for (let h = from * KEEP_EVERY; h < hours; h++) {
      if (h % KEEP_EVERY === 0) replay.keep(states[h / KEEP_EVERY]);
      replay.play(h, ways[h]);
    }
  };
  replay.keep(states[0]);
  keepFrom(0, best.ways);

  /** Plays `tried` from the hour of its first change; takes it over where it is better. */
  const take = (firstHour: number): boolean => {
    const from = Math.floor(firstHour / KEEP_EVERY);
    replay.restore(states[from]);
    for (let h = from * KEEP_EVERY; h < hours; h++) {
      replay.play(h, tried[h]);
      if (best.shortfall === 0 && replay.cost() > best.cost) break;
      if (h % KEEP_EVERY !== KEEP_EVERY - 1) continue;
      replay.stand(standing);
      if (isSpent(standing, limits) || (best.shortfall === 0 && standing.missed > 0)) break;
    }
    const cost = replay.cost();
    replay.stand(standing);
    const short = shortfall(standing, limits);
    const good =
      !isSpent(standing, limits) &&
      (short < best.shortfall || (short === best.shortfall && cost < best.cost - 1e-9 * Math.abs(best.cost)));
    if (good) {
      best.ways.set(tried);
      best.cost = cost;
      best.shortfall = short;
      keepFrom(firstHour, best.ways);
    } else tried.set(best.ways);
    return good;
  };
  const off = (from: number, to: number) => {
    for (let h = Math.max(0, from); h < Math.min(hours, to); h++) tried[h] = 0;
  };

  /** @returns whether any burnt */
  const unheat = (from: number, to: number): boolean => {
    let burnt = false;
    for (let h = from; h < to; h++) {
      if (tried[h] !== 2) continue;
      tried[h] = 1;
      burnt = true;
    }
    return burnt;
  };

  for (let round = 0; round < rounds && goOn(); round++) {
    let moved = false;
    for (let from = 0; from < hours && best.shortfall > 0 && goOn(); from += pieceHours) {
      const to = Math.min(hours, from + pieceHours);
      for (let h = from; h < to; h++) if (tried[h] === 0) tried[h] = 1;
      if (!same(tried, best.ways, from, to)) moved = take(from) || moved;
    }
    // From the end: what runs last is least needed by what follows.
    for (let from = Math.floor((hours - 1) / pieceHours) * pieceHours; from >= 0 && goOn(); from -= pieceHours) {
      const to = Math.min(hours, from + pieceHours);
      if (!anyOn(best.ways, from, to)) continue;
      off(from, to);
      if (take(from)) {
        moved = true;
        continue;
      }
      if (unheat(from, to) && take(from)) {
        moved = true;
        continue;
      }
      for (const step of NEIGHBOURS) {
        const other = from + step * pieceHours;
        if (other < 0 || other + pieceHours > hours || anyOn(best.ways, other, other + pieceHours)) continue;
        off(from, to);
        for (let h = from; h < to; h++) tried[other + h - from] = best.ways[h];
        if (take(Math.min(from, other))) {
          moved = true;
          break;
        }
      }
    }
    for (let h = hours - 1; h >= 0 && goOn(); h--) {
      if (best.ways[h] === 0) continue;
      const edge = h === 0 || h === hours - 1 || best.ways[h - 1] === 0 || best.ways[h + 1] === 0;
      if (!edge) continue;
      off(h, h + 1);
      moved = take(h) || (unheat(h, h + 1) && take(h)) || moved;
    }
    if (!moved) break;
  }
  replay.restore(states[0]);
  return best;
}

function anyOn(ways: Uint8Array, from: number, to: number): boolean {
  for (let h = from; h < to; h++) if (ways[h] > 0) return true;
  return false;
}

function same(a: Uint8Array, b: Uint8Array, from: number, to: number): boolean {
  for (let h = from; h < to; h++) if (a[h] !== b[h]) return false;
  return true;
}
