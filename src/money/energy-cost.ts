import type { RateBreaks } from './rate-breaks.ts';

const MS_W_PER_KWH = 3.6e9;

/** Power through time: stretches of constant power, rising, without overlap. Arrays are [spans]. */
export interface PowerSpans {
  /** ms UTC */
  startMs: Float64Array;
  endMs: Float64Array;
  /** W; NaN counts nothing */
  powerW: Float64Array;
}

/**
 * Energy (kWh) and its cost, the spans cut exactly where the price changes.
 *
 * @param fromMs,toMs  the window, ms UTC
 * @returns            cost in money; NaN where energy was used at a time without a price
 */
export function energyCost(
  spans: PowerSpans,
  rates: RateBreaks,
  fromMs = Number.NEGATIVE_INFINITY,
  toMs = Number.POSITIVE_INFINITY,
): { kwh: number; cost: number } {
  let kwh = 0;
  let cost = 0;
  let piece = 0;
  for (let i = 0; i < spans.startMs.length; i++) {
    const power = spans.powerW[i];
    const end = Math.min(spans.endMs[i], toMs);
    let at = Math.max(spans.startMs[i], fromMs);
    if (!(end > at) || !(power > 0)) continue;
    while (at < end) {
      while (piece + 1 < rates.startMs.length && rates.startMs[piece + 1] <= at) piece += 1;
      const next = piece + 1 < rates.startMs.length ? rates.startMs[piece + 1] : Number.POSITIVE_INFINITY;
      const to = Math.min(end, next);
      const used = (power * (to - at)) / MS_W_PER_KWH;
      const price = rates.startMs.length > 0 && rates.startMs[0] <= at ? rates.pricePerKwh[piece] : Number.NaN;
      kwh += used;
      cost += used * price;
      at = to;
    }
  }
  return { kwh, cost };
}
