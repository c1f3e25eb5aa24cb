import { energyCost } from '../../money/energy-cost.ts';
import type { RateBreaks } from '../../money/rate-breaks.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import type { FanSeason, Span } from '../types.ts';

const HOUR_MS = 3_600_000;

/** Money that hours of unknown moment may have cost less, and more, than spread evenly. */
export interface PlacingDoubt {
  less: number;
  more: number;
}

/**
 * A meter read once a day or more seldom tells how long a fan ran, but not when: within each such stretch the hours may all
 * have been the cheapest, or all the dearest. A fan on a clock does the same every day, so that the stretches' doubts add up.
 *
 * @param fromMs,toMs  the window, ms UTC
 * @returns            money, none below zero; none where one price holds throughout
 */
export function placingDoubt(
  { spans, spread }: Pick<FanSeason, 'spans' | 'spread'>,
  rates: RateBreaks,
  fromMs = Number.NEGATIVE_INFINITY,
  toMs = Number.POSITIVE_INFINITY,
): PlacingDoubt {
  const doubt = { less: 0, more: 0 };
  for (const stretch of spread ?? []) {
    const from = Math.max(stretch.fromMs, fromMs);
    const to = Math.min(stretch.toMs, toMs);
    const hours = to > from ? fanHoursBetween(spans, from, to) : 0;
    const pieces = pricesWithin(rates, { fromMs: from, toMs: to });
    if (hours === 0 || pieces.length < 2) continue;
    const { kwh, cost } = energyCost(spans, rates, from, to);
    const placed = (rising: boolean) => (kwh / hours) * filled(pieces, hours, rising);
    doubt.less += Math.max(0, cost - placed(true));
    doubt.more += Math.max(0, placed(false) - cost);
  }
  return doubt;
}

/** The same of several fans together. */
export function placingDoubts(
  fans: readonly Pick<FanSeason, 'spans' | 'spread'>[],
  rates: RateBreaks,
  fromMs: number,
  toMs: number,
): PlacingDoubt {
  const sum = { less: 0, more: 0 };
  for (const fan of fans) {
    const { less, more } = placingDoubt(fan, rates, fromMs, toMs);
    sum.less += less;
    sum.more += more;
  }
  return sum;
}

interface Priced {
  hours: number;
  price: number;
}

function pricesWithin({ startMs, pricePerKwh }: RateBreaks, { fromMs, toMs }: Span): Priced[] {
  const pieces: Priced[] = [];
  for (let i = 0; i < startMs.length && startMs[i] < toMs; i++) {
    const end = Math.min(toMs, startMs[i + 1] ?? toMs);
    const hours = (end - Math.max(fromMs, startMs[i])) / HOUR_MS;
    if (hours > 0 && !Number.isNaN(pricePerKwh[i])) pieces.push({ hours, price: pricePerKwh[i] });
  }
  return pieces;
}

/** Hours x price of so many hours in the cheapest pieces, or in the dearest. */
function filled(pieces: readonly Priced[], hours: number, cheapest: boolean): number {
  const inTurn = [...pieces].sort((a, b) => (cheapest ? a.price - b.price : b.price - a.price));
  let left = hours;
  let sum = 0;
  for (const piece of inTurn) {
    const here = Math.min(left, piece.hours);
    sum += here * piece.price;
    left -= here;
  }
  return sum;
}
