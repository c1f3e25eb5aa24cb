import { type Estimate, estimate } from '../../base/estimate.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { NO_RATES, type RateBreaks } from '../../money/rate-breaks.ts';
import type { Bin } from '../../season/season.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { BinFan, FanSpans, OutsideStorage } from '../types.ts';

/** Less than this part of the hours is a test run nobody asks about. */
const MEANINGFUL_SHARE = 0.01;

/**
 * Fan hours while the bin stood empty, and what their energy cost: they were run and paid, so the bin's hours and cost
 * hold them, but no grain was dried or cooled by them. The bin holds grain from the first dated depth or `filled`,
 * whichever is earlier, to `unloaded`.
 *
 * @param parts  each fan of the bin: its runs, its prices and the part of it that the bin carries; null rates: no price
 * @returns      null where hardly any hour lies outside, or where no date says when the grain came and went
 */
export function outsideStorage(
  bin: Bin,
  spans: FanSpans,
  parts: readonly { spans: FanSpans; rates: RateBreaks | null; part: number }[],
): OutsideStorage | null {
  const before = [Number.NEGATIVE_INFINITY, fillTimes(bin).begunMs ?? Number.NEGATIVE_INFINITY] as const;
  const after = [bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
  const hoursBefore = fanHoursBetween(spans, ...before);
  const hoursAfter = fanHoursBetween(spans, ...after);
  const all = fanHoursBetween(spans);
  if (!(hoursBefore + hoursAfter > MEANINGFUL_SHARE * all)) return null;
  let energyKwh = 0;
  let cost = 0;
  for (const { spans: own, rates, part } of parts) {
    for (const [fromMs, toMs] of [before, after]) {
      const used = energyCost(own, rates ?? NO_RATES, fromMs, toMs);
      energyKwh += used.kwh * part;
      cost += used.cost * part;
    }
  }
  return { hoursBefore, hoursAfter, energyKwh, energyCost: Number.isNaN(cost) ? null : cost };
}

/** The bin's fan hours and energy while it held grain: what its change of moisture is held against. */
export function whileGrain({ hours, energyKwh, outside }: Pick<BinFan, 'hours' | 'energyKwh' | 'outside'>): {
  hours: Estimate;
  energyKwh: Estimate;
} {
  const less = ({ value, interval, why }: Estimate, by: number): Estimate =>
    value === null || interval === null
      ? { value, interval, why }
      : estimate(value - by, Math.max(0, interval[0] - by), interval[1] - by);
  if (!outside) return { hours, energyKwh };
  return {
    hours: less(hours, outside.hoursBefore + outside.hoursAfter),
    energyKwh: less(energyKwh, outside.energyKwh),
  };
}

/** The same in a sentence; `currency` as in season.yaml. */
export function outsideText(
  { hoursBefore, hoursAfter, energyKwh, energyCost: cost }: OutsideStorage,
  currency: string,
): string {
  const show = (value: number) => String(Number(value.toPrecision(3)));
  const when = [
    ...(hoursBefore > 0 ? [`${show(hoursBefore)} h before any grain was in`] : []),
    ...(hoursAfter > 0 ? [`${show(hoursAfter)} h after it was unloaded`] : []),
  ].join(' and ');
  const money = cost === null ? '' : `, ${show(cost)} ${currency} of energy`;
  return `The bin’s fans ran ${when} (${show(energyKwh)} kWh${money}); the hours and the cost, also those per bushel and per point, include them; points per fan hour do not.`;
}
