import { STILL } from './fan-state.ts';
import { DAY_MS, HOUR_MS, type Track } from './track.ts';

/** A sensor whose daily swing is at least this share of the outdoor air's hangs in air. Sun-warmed wall grain shows less than a quarter; 15 cm under the surface a day's wave is down to a tenth. */
export const SWING_GAIN = 0.45;
/** and it must keep step with the air: correlation of departures from the day's mean */
export const SWING_CORRELATION = 0.7;
/** The sensor may be ahead of the air (a sunlit roof) or behind it (a sluggish headspace). */
const SWING_LAGS_H = [-2, -1, 0, 1, 2, 3, 4] as const;
/** Days looked at together. */
export const SWING_DAYS = 5;
/** Readings they must hold. */
const SWING_READINGS = 12;
/** A day's air must depart from its mean by this much (standard deviation) before it tells anything. */
const SWING_AIR_K = 1.2;
/** A shorter stretch is not called out of the grain. */
export const SWING_LEAST_DAYS = 4;
/** Without a fan log: the first sensor in grain must be this calm, else the fan's air carries the day's wave up through the grain. */
export const SWING_CALM_GAIN = 0.3;
/** At the ends of a stretch single days decide, with a lower bar since the swing is known. */
const SWING_EDGE_GAIN = 0.35;

/** Outdoor air by the hour as departures from the mean of 24 hours around. */
export interface AirSwing {
  firstHour: number;
  /** [hours], NaN where the air is not known */
  departureK: Float64Array;
}

/**
 * @param timeMs  [readings], rising
 * @param tempC   [readings]
 */
export function airSwing(timeMs: ArrayLike<number>, tempC: ArrayLike<number>, use: ArrayLike<number>): AirSwing {
  const hours = timeMs.length === 0 ? 0 : Math.floor((timeMs[timeMs.length - 1] - timeMs[0]) / HOUR_MS) + 1;
  const firstHour = timeMs.length === 0 ? 0 : Math.floor(timeMs[0] / HOUR_MS);
  const grid = new Float64Array(Math.max(0, hours) + 1).fill(Number.NaN);
  let last = -1;
  for (let i = 0; i < timeMs.length; i++) {
    if (!use[i]) continue;
    const hour = Math.round(timeMs[i] / HOUR_MS) - firstHour;
    if (hour < 0 || hour >= grid.length) continue;
    grid[hour] = tempC[i];
    // Three-hourly weather is joined by straight lines, a longer hole stays one.
    if (last >= 0 && hour - last > 1 && hour - last <= 6) {
      for (let h = last + 1; h < hour; h++)
        grid[h] = grid[last] + ((tempC[i] - grid[last]) * (h - last)) / (hour - last);
    }
    last = hour;
  }
  const departureK = new Float64Array(grid.length).fill(Number.NaN);
  for (let h = 0; h < grid.length; h++) {
    let sum = 0;
    let count = 0;
    for (let k = Math.max(0, h - 12); k < Math.min(grid.length, h + 12); k++) {
      if (Number.isNaN(grid[k])) continue;
      sum += grid[k];
      count += 1;
    }
    if (count >= 16) departureK[h] = grid[h] - sum / count;
  }
  return { firstHour, departureK };
}

const SUMS = 6;

/** Sums of one sensor's and the air's departures by day (UTC) and lag. */
interface DaySums {
  firstDay: number;
  days: number;
  /** [days x lags x SUMS]: n, s, a, ss, aa, sa */
  sums: Float64Array;
}

function daySums(track: Track, air: Uint8Array, outdoor: AirSwing): DaySums | null {
  const { timeMs, values, use } = track;
  const n = timeMs.length;
  if (n === 0) return null;
  const firstDay = Math.floor(timeMs[0] / DAY_MS);
  const days = Math.floor(timeMs[n - 1] / DAY_MS) - firstDay + 1;
  const sums = new Float64Array(days * SWING_LAGS_H.length * SUMS);
  let low = 0;
  let high = 0;
  let total = 0;
  let count = 0;
  const still = (i: number) => use[i] === 1 && air[i] === STILL;
  for (let i = 0; i < n; i++) {
    while (high < n && timeMs[high] < timeMs[i] + DAY_MS / 2) {
      if (still(high)) {
        total += values[high];
        count += 1;
      }
      high += 1;
    }
    while (timeMs[low] < timeMs[i] - DAY_MS / 2) {
      if (still(low)) {
        total -= values[low];
        count -= 1;
      }
      low += 1;
    }
    if (!still(i) || count < 3) continue;
    const s = values[i] - total / count;
    const hour = Math.round(timeMs[i] / HOUR_MS) - outdoor.firstHour;
    const day = Math.floor(timeMs[i] / DAY_MS) - firstDay;
    for (let lag = 0; lag < SWING_LAGS_H.length; lag++) {
      const a = outdoor.departureK[hour - SWING_LAGS_H[lag]];
      if (a === undefined || Number.isNaN(a)) continue;
      const at = (day * SWING_LAGS_H.length + lag) * SUMS;
      sums[at] += 1;
      sums[at + 1] += s;
      sums[at + 2] += a;
      sums[at + 3] += s * s;
      sums[at + 4] += a * a;
      sums[at + 5] += s * a;
    }
  }
  return { firstDay, days, sums };
}

/** How a sensor swings against the air over some days: best of the lags; null where there is too little to say. */
function swingOver(of: DaySums, from: number, to: number, least: number): { gain: number; r: number } | null {
  let best: { gain: number; r: number } | null = null;
  for (let lag = 0; lag < SWING_LAGS_H.length; lag++) {
    const sum = new Float64Array(SUMS);
    for (let day = Math.max(0, from); day <= Math.min(of.days - 1, to); day++) {
      const at = (day * SWING_LAGS_H.length + lag) * SUMS;
      for (let k = 0; k < SUMS; k++) sum[k] += of.sums[at + k];
    }
    const [n, s, a, ss, aa, sa] = sum;
    if (n < least) continue;
    const airVar = aa / n - (a / n) ** 2;
    if (airVar < SWING_AIR_K ** 2) continue;
    const ownVar = ss / n - (s / n) ** 2;
    const both = sa / n - (s / n) * (a / n);
    const r = ownVar > 1e-12 ? both / Math.sqrt(ownVar * airVar) : 0;
    if (best === null || r > best.r) best = { gain: Math.sqrt(Math.max(0, ownVar) / airVar), r };
  }
  return best;
}

const IN_GRAIN = 0;
export const IN_AIR = 1;
const NOT_KNOWN = 2;

/** A sensor's place by day (UTC). */
export interface Places {
  firstDay: number;
  /** IN_GRAIN or IN_AIR, [days] */
  state: Uint8Array;
  /** size of the swing against the air's, whatever its phase, [days]; NaN where there is too little to say */
  gain: Float64Array;
}

/**
 * Where a sensor hung, from its daily swing while the fan stood still.
 *
 * @param air      STILL, MOVING or UNKNOWN by reading, [readings]; only still readings are used
 */
export function placesBySwing(track: Track, air: Uint8Array, outdoor: AirSwing): Places | null {
  const of = daySums(track, air, outdoor);
  if (of === null) return null;
  const state = new Uint8Array(of.days).fill(NOT_KNOWN);
  const gain = new Float64Array(of.days).fill(Number.NaN);
  const half = (SWING_DAYS - 1) / 2;
  for (let day = 0; day < of.days; day++) {
    const swing = swingOver(of, day - half, day + half, SWING_READINGS);
    if (swing === null) continue;
    state[day] = swing.gain >= SWING_GAIN && swing.r >= SWING_CORRELATION ? IN_AIR : IN_GRAIN;
    gain[day] = swing.gain;
  }
  if (state.every((one) => one === NOT_KNOWN)) return null;
  const places = withoutShort(filled(state));
  if (places.includes(IN_AIR)) sharpen(places, of);
  return { firstDay: of.firstDay, state: places, gain };
}

/** Days that cannot be told take the place before them, those at the start the place after. */
function filled(state: Uint8Array): Uint8Array {
  const out = Uint8Array.from(state);
  let before: number = out.find((one) => one !== NOT_KNOWN) ?? IN_GRAIN;
  for (let day = 0; day < out.length; day++) {
    if (out[day] === NOT_KNOWN) out[day] = before;
    else before = out[day];
  }
  return out;
}

/** A few days the other way inside a long stretch (a snowed-in roof, a warm spell) change nothing; first holes, then islands. */
function withoutShort(state: Uint8Array): Uint8Array {
  const out = Uint8Array.from(state);
  for (const short of [IN_GRAIN, IN_AIR]) {
    for (let day = 0; day < out.length; day++) {
      if (out[day] !== short) continue;
      const first = day;
      while (day + 1 < out.length && out[day + 1] === short) day += 1;
      const inside = first > 0 && day + 1 < out.length;
      if (day - first + 1 < SWING_LEAST_DAYS && (inside || short === IN_AIR)) {
        out.fill(short === IN_AIR ? IN_GRAIN : IN_AIR, first, day + 1);
      }
    }
  }
  return out;
}

/** A window of days blurs the day of the change: single days move each end to where the swing begins or ends. */
function sharpen(state: Uint8Array, of: DaySums): void {
  const swings = (day: number) => {
    const swing = swingOver(of, day, day, 4);
    return swing === null ? null : swing.gain >= SWING_EDGE_GAIN && swing.r >= SWING_CORRELATION;
  };
  const reach = SWING_DAYS - 1;
  for (let day = 1; day < state.length; day++) {
    if (state[day] === state[day - 1]) continue;
    const begins = state[day] === IN_AIR;
    // Outwards while days swing, else inwards while they don't.
    const way = begins ? -1 : 1;
    let edge = begins ? day : day - 1;
    for (let k = 0; k < reach && state[edge + way] === IN_GRAIN && swings(edge + way) === true; k++) {
      edge += way;
      state[edge] = IN_AIR;
    }
    for (let k = 0; k < reach && state[edge] === IN_AIR && swings(edge) === false; k++) {
      state[edge] = IN_GRAIN;
      edge -= way;
    }
    if (!begins) day = Math.max(day, edge + 1);
  }
}
