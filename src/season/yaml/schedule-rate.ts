import type { PerGrain } from '../../base/per-grain.ts';
import type { MoistureSchedule } from '../../money/moisture-schedule.ts';
import { checked } from './fields.ts';
import { readPerGrain } from './per-grain.ts';
import { show } from './show.ts';

/** What a schedule takes off: money, a share of the price, or weight. */
export type ScheduleUnit = MoistureSchedule['unit'];
type Read<T> = ({ ok: true } & T) | { ok: false; reason: string };

const SHARE = /^([\d.]+) *% +of +(price|weight)$/;
const POINTS = /^(\d+\.?\d*|\.\d+) +points?$/;

/** `0.05 USD/bu`, `2 USD/t`, `1 % of price`, `0.7 % of weight`. */
export function readRate(
  given: string,
  currency: string,
): Read<{ rate: number; unit: ScheduleUnit; of: PerGrain['of'] | null }> {
  const share = SHARE.exec(given.trim());
  if (share !== null) {
    const percent = Number(share[1]);
    if (!(percent <= 100)) return { ok: false, reason: `is ${show(given)}; it must lie between 0 % and 100 %.` };
    return { ok: true, rate: percent / 100, unit: share[2] as ScheduleUnit, of: null };
  }
  const money = readPerGrain('price per bushel', given, currency);
  if (money.ok && money.si >= 0) return { ok: true, rate: money.si, unit: 'money', of: money.per.of };
  const reason = `is ${show(given)}; it takes ${rateTakes(currency)}.`;
  return { ok: false, reason: money.ok ? `is ${show(given)}; it must not be negative.` : reason };
}

export const rateTakes = (currency: string) => `e.g. "0.05 ${currency}/bu", "1 % of price" or "0.7 % of weight"`;

/** A rate as text. */
export const rate = (currency: string) =>
  checked('SEASON_UNIT', rateTakes(currency), (value) => readRate(value, currency), {
    description: `what is taken off: ${rateTakes(currency)}`,
    pattern: `^ *[\\d.,]+ *(?:% +of +(?:price|weight)|[A-Z]{3} */ *(?:bu|t)) *$`,
  });

/** `0.5 point`. */
export function readPoints(given: string): Read<{ points: number }> {
  const match = POINTS.exec(given.trim());
  const points = match === null ? Number.NaN : Number(match[1]);
  if (points >= 0.01 && points <= 10) return { ok: true, points };
  const why =
    match === null
      ? 'it takes points of moisture with the word, e.g. "0.5 point"'
      : 'it must lie between 0.01 and 10 points';
  return { ok: false, reason: `is ${show(given)}; ${why}.` };
}

/** A number of points as text. */
export const points = (description: string) =>
  checked('SEASON_UNIT', 'points of moisture, e.g. "0.5 point"', readPoints, { description, pattern: POINTS.source });
