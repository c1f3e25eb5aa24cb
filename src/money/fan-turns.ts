import type { Zone } from '../base/zone.ts';
import { DEMAND_MS, quarterMeans } from './demand.ts';
import type { PowerSpans } from './energy-cost.ts';
import { localMoment, nextLocalDay } from './local-time.ts';
import type { DemandRule } from './tariff.ts';
import { whenHolds } from './when-holds.ts';

interface Piece {
  part: number;
  startMs: number;
  endMs: number;
  powerW: number;
}

/** What one fan did in a day. */
interface Need {
  part: number;
  /** demand intervals that it ran, with a fraction */
  intervals: number;
  /** mean power while it ran, kW */
  kw: number;
}

/**
 * The fans in turns: each runs as long in each local day as it did, at its day's mean power, but in the demand intervals
 * that make the day's counted peak low: first in those in which no demand rule holds, then in those with the least running
 * beside it, the strongest fan first. Days whose peak that does not lower stay as they were run, and so do days of one fan,
 * which has nobody to take turns with. A schedule that could have
 * been run; `leastPeaks` tells how much lower any other could have been.
 *
 * @param parts  one entry a fan
 * @returns      [parts]
 */
export function fanTurns(
  parts: readonly PowerSpans[],
  rules: readonly DemandRule[],
  zone: Zone,
  fromMs: number,
  toMs: number,
): PowerSpans[] {
  const pieces = parts.map((): { startMs: number; endMs: number; powerW: number }[] => []);
  const asRun = parts.map(quarterMeans);
  for (const day of daysOf(parts, zone, fromMs, toMs)) {
    const counted = day.startsMs.map((ms) => holds(rules, zone, ms));
    const load = day.startsMs.map(() => 0);
    const turned: Piece[] = [];
    for (const { part, intervals, kw } of day.needs) {
      const order = day.startsMs
        .map((_, i) => i)
        .sort((a, b) => Number(counted[a]) - Number(counted[b]) || load[a] - load[b] || a - b)
        .slice(0, Math.ceil(intervals));
      let left = intervals;
      for (const i of order) {
        const share = Math.min(1, left);
        left -= share;
        load[i] += kw * share;
        const startMs = day.startsMs[i];
        turned.push({ part, startMs, endMs: startMs + share * DEMAND_MS, powerW: kw * 1000 });
      }
    }
    const peak = (kw: (i: number) => number) => Math.max(0, ...day.startsMs.map((_, i) => (counted[i] ? kw(i) : 0)));
    const ran = (i: number) => asRun.reduce((sum, part) => sum + (part.get(day.startsMs[i] / DEMAND_MS) ?? 0), 0);
    const lower = day.needs.length > 1 && peak((i) => load[i]) < peak(ran) - 1e-9;
    for (const { part, ...piece } of lower ? turned : day.ran) pieces[part].push(piece);
  }
  return pieces.map((list) => {
    list.sort((a, b) => a.startMs - b.startMs);
    return {
      startMs: Float64Array.from(list, (piece) => piece.startMs),
      endMs: Float64Array.from(list, (piece) => piece.endMs),
      powerW: Float64Array.from(list, (piece) => piece.powerW),
    };
  });
}

/**
 * Below what no schedule can bring the peak of a demand rule, by local day, with each fan's hours of the day kept and fans that run
 * whole demand intervals: not below the mean of what does not fit into the intervals in which the rule does not hold; and
 * where fans need more than k - 1 times the counted intervals between them, k of them run at once, at least the weakest k.
 *
 * @returns  kW and the first moment of each day in [fromMs, toMs)
 */
export function leastPeaks(
  parts: readonly PowerSpans[],
  rule: DemandRule,
  zone: Zone,
  fromMs: number,
  toMs: number,
): { dayMs: number; kw: number }[] {
  return daysOf(parts, zone, fromMs, toMs).map(({ startsMs, needs }) => {
    const counted = startsMs.filter((ms) => holds([rule], zone, ms)).length;
    const free = startsMs.length - counted;
    const left = needs
      .map(({ intervals, kw }) => ({ kw, intervals: intervals - free }))
      .filter(({ intervals }) => intervals > 0);
    if (counted === 0) return { dayMs: startsMs[0], kw: 0 };
    let least = left.reduce((sum, { intervals, kw }) => sum + intervals * kw, 0) / counted;
    // The strongest j fans alone: k of them meet, so the weakest k of these at least.
    let need = 0;
    left.forEach(({ intervals }, j) => {
      need += Math.floor(intervals + 1e-9);
      const atOnce = Math.ceil(need / counted - 1e-9);
      const weakest = left.slice(j + 1 - atOnce, j + 1);
      least = Math.max(
        least,
        weakest.reduce((sum, { kw }) => sum + kw, 0),
      );
    });
    return { dayMs: startsMs[0], kw: least };
  });
}

function holds(rules: readonly DemandRule[], zone: Zone, ms: number): boolean {
  const at = localMoment(zone, ms);
  return rules.some((rule) => whenHolds(rule.when, at));
}

/** The local days of [fromMs, toMs) on which any fan ran: where their demand intervals begin, and what each fan did, strongest first. */
function daysOf(parts: readonly PowerSpans[], zone: Zone, fromMs: number, toMs: number) {
  const days: { startsMs: number[]; needs: Need[]; ran: Piece[] }[] = [];
  const at = parts.map(() => 0);
  for (let dayMs = fromMs; dayMs < toMs; ) {
    const endMs = Math.min(nextLocalDay(zone, dayMs), toMs);
    const needs: Need[] = [];
    const ran: Piece[] = [];
    parts.forEach((spans, part) => {
      let onMs = 0;
      let wattMs = 0;
      while (at[part] < spans.endMs.length && spans.endMs[at[part]] <= dayMs) at[part] += 1;
      for (let i = at[part]; i < spans.startMs.length && spans.startMs[i] < endMs; i++) {
        if (!(spans.powerW[i] > 0)) continue;
        const piece = { startMs: Math.max(spans.startMs[i], dayMs), endMs: Math.min(spans.endMs[i], endMs) };
        onMs += piece.endMs - piece.startMs;
        wattMs += (piece.endMs - piece.startMs) * spans.powerW[i];
        ran.push({ part, ...piece, powerW: spans.powerW[i] });
      }
      if (onMs > 0) needs.push({ part, intervals: onMs / DEMAND_MS, kw: wattMs / onMs / 1000 });
    });
    const startsMs: number[] = [];
    // Days begin on the clock's quarter hours; the first and the last may be cut by the logs.
    for (let ms = Math.floor(dayMs / DEMAND_MS) * DEMAND_MS; ms < endMs; ms += DEMAND_MS) startsMs.push(ms);
    if (needs.length > 0) days.push({ startsMs, ran, needs: needs.sort((a, b) => b.kw - a.kw) });
    dayMs = endMs;
  }
  return days;
}
