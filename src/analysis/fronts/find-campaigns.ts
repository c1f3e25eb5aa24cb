import type { FrontKind, Span } from '../types.ts';
import { dayBefore, dayMean } from './day-mean.ts';
import type { FanPieces } from './fan-pieces.ts';
import { CLEARLY_AT_START_K, CLEARLY_K, DAY_H, HOUR_MS, SHORTEST_CAMPAIGN_H } from './front-limits.ts';

/** The air that made the grain behind a front what it is: mean over this many fan hours. */
const AIR_BEHIND_H = 48;
/** By how much, K: more than the rounding of a log. */
export const TURNED_K = 0.5;
/** How far into the day around it a campaign may begin, h: half a day. */
const START_WITHIN_H = 12;
/** The hour with which it begins shows this part of what makes the day's mean clear: air that falls slowly shows no more at first. */
export const START_PART = 0.5;

/** A stretch of fan running whose air was clearly cooler or warmer than the grain. */
export interface CampaignSpan {
  kind: FrontKind;
  span: Span;
  /** pieces [first, last] */
  first: number;
  last: number;
  /** run that it belongs to */
  run: number;
}

/**
 * Campaigns: begun when the day's mean air is CLEARLY_K from the grain's mean (CLEARLY_AT_START_K where the fan comes on
 * after a long rest), ended by a long rest or when the day's mean air crosses the grain's mean. At high airflow the daily wave goes through the grain too: its mean is taken over
 * the day before a campaign begins, as far as the run goes back, and over the day around when the air crosses it.
 *
 * Damp grain cools below the air that cools it. Then the grain's mean crosses the air's while the front is still under
 * way, and a grain cooler than its own air would look like a warming campaign. So the air must also have turned: come
 * past the mean of its own last AIR_BEHIND_H fan hours, which in dry grain is what the grain behind the front holds.
 *
 * In a fan that runs for weeks the grain itself swings with the day's air. There the air is clearly cooler or warmer only
 * where it differs by more than that swing: else no one moment would be the front's.
 *
 * @param airC    [pieces], entering air
 * @param grainC  [pieces], grain mean
 * @param swingK  [pieces], how far the grain swings with the day to each side
 */
export function findCampaigns(
  pieces: FanPieces,
  airC: Float64Array,
  grainC: Float64Array,
  swingK: Float64Array,
): CampaignSpan[] {
  const dayC = dayMean(pieces, airC);
  const dayGrainC = dayMean(pieces, grainC);
  const metC = dayBefore(pieces, grainC);
  const before = trailingMean(pieces, airC, AIR_BEHIND_H);
  const found: CampaignSpan[] = [];
  let open: CampaignSpan | null = null;
  /** air behind the front of the campaign before, while its run lasts */
  let behindC = Number.NaN;
  const close = () => {
    if (open !== null) found.push(open);
    open = null;
  };
  for (let i = 0; i < pieces.midMs.length; i++) {
    if (i === 0 || pieces.run[i] !== pieces.run[i - 1]) {
      close();
      behindC = Number.NaN;
    }
    if (Number.isNaN(dayC[i] - metC[i])) continue;
    if (open !== null) {
      const sign = signOf(open.kind);
      // In a run's first day the air so far is a night's or an afternoon's: against that every day's mean has turned.
      const wholeDay = pieces.toMs[i] - pieces.runFromMs[pieces.run[i]] >= DAY_H * HOUR_MS;
      const turned = wholeDay && sign * (dayC[i] - before[i]) <= -TURNED_K;
      if (sign * (dayC[i] - dayGrainC[i]) > 0 || !turned) {
        open.last = i;
        open.span.toMs = pieces.toMs[i];
        continue;
      }
      behindC = before[i];
      close();
    }
    const differenceK = dayC[i] - metC[i];
    const kind: FrontKind = differenceK < 0 ? 'cooling' : 'warming';
    const sign = signOf(kind);
    const sameAir = found.at(-1)?.run === pieces.run[i] && found.at(-1)?.kind !== kind && !Number.isNaN(behindC);
    const clearK = sameAir ? Math.min(sign * differenceK, sign * (dayC[i] - behindC)) : sign * differenceK;
    const atStart = i === 0 || pieces.run[i] !== pieces.run[i - 1];
    if (clearK < (atStart ? CLEARLY_AT_START_K : Math.max(CLEARLY_K, swingK[i]))) continue;
    const first = startOf(pieces, airC, grainC, i, sign);
    const span = { fromMs: pieces.fromMs[first], toMs: pieces.toMs[Math.max(first, i)] };
    open = { kind, span, first, last: Math.max(first, i), run: pieces.run[i] };
    i = open.last;
  }
  close();
  return found.filter((one) => hoursOf(pieces, one) >= SHORTEST_CAMPAIGN_H);
}

/** +1 for warming, -1 for cooling. */
export function signOf(kind: FrontKind): 1 | -1 {
  return kind === 'warming' ? 1 : -1;
}

function hoursOf(pieces: FanPieces, { first, last }: CampaignSpan): number {
  let sum = 0;
  for (let i = first; i <= last; i++) sum += pieces.hours[i];
  return sum;
}

/**
 * The piece with which a campaign begins. At the head of a run it is the fan's start. In a run under way the day's mean
 * shows a change of the air half a day early: then it is the first piece, within half a day, whose own air shows it too.
 */
function startOf(pieces: FanPieces, airC: Float64Array, grainC: Float64Array, at: number, sign: number): number {
  if (at === 0 || pieces.run[at] !== pieces.run[at - 1]) return at;
  return firstToShow(pieces, at, (piece) => sign * (airC[piece] - grainC[piece]));
}

/** Of the pieces within half a day from `at` on the first whose own air is clear enough, by `apartK`; `at` where none is. */
export function firstToShow(pieces: FanPieces, at: number, apartK: (piece: number) => number): number {
  const untilMs = pieces.midMs[at] + START_WITHIN_H * HOUR_MS;
  for (let i = at; i < pieces.midMs.length && pieces.midMs[i] <= untilMs && pieces.run[i] === pieces.run[at]; i++) {
    if (apartK(i) >= START_PART * CLEARLY_K) return i;
  }
  return at;
}

/** Mean of the air over the fan hours of the run up to each piece, [pieces]; NaN where none is known. */
function trailingMean(pieces: FanPieces, airC: Float64Array, spanHours: number): Float64Array {
  const out = new Float64Array(airC.length);
  let low = 0;
  let sum = 0;
  let known = 0;
  let length = 0;
  for (let i = 0; i < airC.length; i++) {
    if (i > 0 && pieces.run[i] !== pieces.run[i - 1]) {
      low = i;
      sum = known = length = 0;
    }
    const add = (piece: number, sign: number) => {
      length += sign * pieces.hours[piece];
      if (Number.isNaN(airC[piece])) return;
      sum += sign * pieces.hours[piece] * airC[piece];
      known += sign * pieces.hours[piece];
    };
    add(i, 1);
    while (length > spanHours && low < i) add(low++, -1);
    out[i] = known > 1e-6 ? sum / known : Number.NaN;
  }
  return out;
}
