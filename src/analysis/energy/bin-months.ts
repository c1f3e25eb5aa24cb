import { withheld } from '../../base/estimate.ts';
import type { Zone } from '../../base/zone.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { NO_RATES } from '../../money/rate-breaks.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { BinFan, FanSeason, FanSpans } from '../types.ts';
import { dearestPrice } from './dearest-price.ts';
import { NO_DEMAND } from './demand-part.ts';
import { type FanCost, fanRelSd } from './fan-cost.ts';
import { ofParts, type Part, scaledPart } from './parts.ts';
import { placingDoubt } from './placing-doubt.ts';
import type { TariffBill } from './tariff-bill.ts';

/** One fan of a bin and what the bin carries of it. */
export interface FanShare {
  fan: FanSeason;
  bill: TariffBill | undefined;
  cost: FanCost;
  heat: Part | null;
  /** part of the fan's energy and cost that this bin carries */
  part: number;
}

/**
 * A bin's fan story by local calendar month, each number with its interval.
 *
 * @param costWhy  why there is no money; null where there is
 * @param all      fan hours of the season, and their standard error
 */
export function binMonths(
  zone: Zone,
  shares: readonly FanShare[],
  spans: FanSpans,
  costWhy: string | null,
  all: { hours: number; sd: number },
): BinFan['months'] {
  return localMonths(zone, spans.startMs[0], spans.endMs[spans.endMs.length - 1]).map(({ month, fromMs, toMs }) => {
    const kwh: Part[] = [];
    const money: Part[] = [];
    const demand: Part[] = [];
    for (const { fan, bill, cost, part } of shares) {
      const rates = bill?.rates ?? NO_RATES;
      const used = energyCost(fan.spans, rates, fromMs, toMs);
      const moreKwh = (unknownHoursBetween(fan.spans, fromMs, toMs) * cost.runningW) / 1000;
      const sd = fanRelSd(fan);
      kwh.push(scaledPart({ value: used.kwh, sd: sd * used.kwh, more: moreKwh }, part));
      const placing = placingDoubt(fan, rates, fromMs, toMs);
      const more = moreKwh * dearestPrice(rates) + placing.more;
      money.push(scaledPart({ value: used.cost, sd: sd * used.cost, more, less: placing.less }, part));
      demand.push(scaledPart(cost.demandByMonth.get(month) ?? NO_DEMAND, part));
    }
    const hours = fanHoursBetween(spans, fromMs, toMs);
    const unknownHours = unknownHoursBetween(spans, fromMs, toMs);
    // Of so many starts and stops each month has its part.
    const hoursPart = {
      value: hours,
      sd: all.hours > 0 ? all.sd * Math.sqrt(hours / all.hours) : 0,
      more: unknownHours,
    };
    const told = {
      hours: ofParts([hoursPart]),
      energyKwh: ofParts(kwh),
      energyCost: costWhy === null ? ofParts(money) : withheld(costWhy),
      demandCost: costWhy === null ? ofParts(demand) : withheld(costWhy),
    };
    return {
      month,
      hours,
      unknownHours,
      energyKwh: told.energyKwh.value ?? 0,
      energyCost: told.energyCost.value,
      demandCost: told.demandCost.value,
      told,
    };
  });
}
