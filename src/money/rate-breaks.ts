import type { Zone } from '../base/zone.ts';
import { HOUR_MS, localMoment } from './local-time.ts';
import type { EnergyRule, Tariff, When } from './tariff.ts';
import { whenHolds } from './when-holds.ts';

/** A price through time, constant between breaks. Arrays are [pieces]; piece i holds from startMs[i] until the next one. */
export interface RateBreaks {
  /** ms UTC, rising */
  startMs: Float64Array;
  /** money per kWh; NaN where no rule matches */
  pricePerKwh: Float64Array;
}

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
 * The clock is asked at every boundary of the rules and at every local hour, so that the days on which it is set are
 * right without a case of their own.
 */
export function rateBreaks(tariff: Tariff, zone: Zone, fromMs: number, toMs: number): RateBreaks {
  const startMs: number[] = [];
  const pricePerKwh: number[] = [];
  const whens = tariff.energy.flatMap((rule) => (rule.when === null ? [] : [rule.when]));
  for (const ms of boundaries(whens, zone, fromMs, toMs)) {
    const price = priceOf(tariff.energy, zone, ms);
    if (pricePerKwh.length > 0 && Object.is(pricePerKwh[pricePerKwh.length - 1], price)) continue;
    startMs.push(ms);
    pricePerKwh.push(price);
  }
  return { startMs: Float64Array.from(startMs), pricePerKwh: Float64Array.from(pricePerKwh) };
}

/** Instants at which a rule may begin or end to hold: fromMs, each local hour, each minute that a rule names. */
function boundaries(whens: readonly When[], zone: Zone, fromMs: number, toMs: number): number[] {
  if (!(toMs > fromMs)) return [];
  const inHour = new Set<number>([0]);
  for (const when of whens) for (const [from, to] of when.hours ?? []) inHour.add(from % 60).add(to % 60);
  const minutes = [...inHour].sort((a, b) => a - b);
  const found: number[] = [fromMs];
  // Offsets are whole quarter hours: walk UTC quarter hours and keep those at which the local clock shows such a minute.
  const quarter = HOUR_MS / 4;
  for (let ms = Math.floor(fromMs / quarter) * quarter; ms < toMs; ms += quarter) {
    const base = ((((ms + zone.offsetMs(ms)) / 60_000) % 60) + 60) % 60;
    for (const minute of minutes) {
      const at = ms + (minute - base) * 60_000;
      if (minute >= base && minute < base + 15 && at > fromMs && at < toMs) found.push(at);
    }
  }
  return found;
}
