import type { Zone } from '../base/zone.ts';
import { HOUR_MS, localMoment } from './local-time.ts';
import type { EnergyRule, Tariff, When } from './tariff.ts';
import { whenHolds } from './when-holds.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 24 * HOUR_MS;
/** No zone sets its clock and sets it back within a week: of equal offsets at both ends all between are equal. */
const STRETCH_MS = 7 * DAY_MS;

/** A price through time, constant between breaks. Arrays are [pieces]; piece i holds from startMs[i] until the next one. */
export interface RateBreaks {
  /** ms UTC, rising */
  startMs: Float64Array;
  /** money per kWh; NaN where no rule matches */
  pricePerKwh: Float64Array;
}

/** No price at any time: for the energy of spans alone. */
export const NO_RATES: RateBreaks = { startMs: new Float64Array(0), pricePerKwh: new Float64Array(0) };

/** Money per kWh at an instant: the first rule that matches; NaN where none does. */
export function rateAt(tariff: Tariff, zone: Zone, utcMs: number): number {
  return priceOf(tariff.energy, zone, utcMs);
}

function priceOf(rules: readonly EnergyRule[], zone: Zone, utcMs: number): number {
  const at = localMoment(zone, utcMs);
  return rules.find((rule) => whenHolds(rule.when, at))?.pricePerKwh ?? Number.NaN;
}

/**
 * The energy price over [fromMs, toMs), ms UTC, as pieces that begin exactly where the local clock passes a boundary.
 *
 * Weeks in which the clock is not set are cut by arithmetic, at local midnights and at the minutes that rules name; in the
 * others the clock is asked by the quarter hour, so that the days on which it is set are right without a case of their own.
 */
export function rateBreaks(tariff: Tariff, zone: Zone, fromMs: number, toMs: number): RateBreaks {
  const startMs: number[] = [];
  const pricePerKwh: number[] = [];
  const whens = tariff.energy.flatMap((rule) => (rule.when === null ? [] : [rule.when]));
  const add = (ms: number, offsetMs?: number) => {
    // Within a stretch of one offset the zone need not be asked again.
    const clock = offsetMs === undefined ? zone : { name: zone.name, offsetMs: () => offsetMs };
    const price = priceOf(tariff.energy, clock, ms);
    if (pricePerKwh.length > 0 && Object.is(pricePerKwh[pricePerKwh.length - 1], price)) return;
    startMs.push(ms);
    pricePerKwh.push(price);
  };
  if (!(toMs > fromMs)) return NO_RATES;
  add(fromMs);
  for (let at = fromMs; whens.length > 0 && at < toMs; at += STRETCH_MS) {
    const end = Math.min(at + STRETCH_MS, toMs);
    const offsetMs = zone.offsetMs(at);
    if (zone.offsetMs(end) === offsetMs) for (const ms of byArithmetic(whens, offsetMs, at, end)) add(ms, offsetMs);
    else for (const ms of byTheClock(whens, zone, at, end)) add(ms);
  }
  return { startMs: Float64Array.from(startMs), pricePerKwh: Float64Array.from(pricePerKwh) };
}

/** Minutes of the local day at which a rule may begin or end to hold, rising: midnight and those that rules name. */
function minutesOfDay(whens: readonly When[]): number[] {
  return [...new Set([0, ...whens.flatMap((when) => when.hours ?? []).flat()])].sort((a, b) => a - b);
}

/** The boundaries in [fromMs, toMs) of a stretch in which the clock is not set. */
function byArithmetic(whens: readonly When[], offsetMs: number, fromMs: number, toMs: number): number[] {
  const minutes = minutesOfDay(whens);
  const found: number[] = [];
  const midnight = Math.floor((fromMs + offsetMs) / DAY_MS) * DAY_MS - offsetMs;
  for (let day = midnight; day < toMs; day += DAY_MS) {
    for (const minute of minutes) {
      const ms = day + minute * MINUTE_MS;
      // 24:00 is the next day's midnight.
      if (ms >= fromMs && ms < toMs && minute < 24 * 60) found.push(ms);
    }
  }
  return found;
}

/** Instants in [fromMs, toMs) at each local hour and each minute that a rule names, the clock asked by the quarter hour. */
function byTheClock(whens: readonly When[], zone: Zone, fromMs: number, toMs: number): number[] {
  const minutes = [...new Set([0, ...minutesOfDay(whens).map((minute) => minute % 60)])].sort((a, b) => a - b);
  const found: number[] = [];
  const quarter = HOUR_MS / 4;
  for (let ms = Math.floor(fromMs / quarter) * quarter; ms < toMs; ms += quarter) {
    const base = ((((ms + zone.offsetMs(ms)) / MINUTE_MS) % 60) + 60) % 60;
    for (const minute of minutes) {
      const at = ms + (minute - base) * MINUTE_MS;
      if (minute >= base && minute < base + 15 && at >= fromMs && at < toMs) found.push(at);
    }
  }
  return found;
}
