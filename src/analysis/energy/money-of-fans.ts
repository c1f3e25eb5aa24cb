import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import type { PeriodDemand } from '../../money/period-demand.ts';
import type { RateBreaks } from '../../money/rate-breaks.ts';
import type { Tariff } from '../../money/tariff.ts';
import { dearestPrice } from './dearest-price.ts';
import { fanRelSd, PEAK_REL_SD } from './fan-cost.ts';
import type { BilledFan } from './over-billed.ts';
import type { PlacingDoubt } from './placing-doubt.ts';

/**
 * What the tariff charges the fans for the time of one bill: energy, demand of their own peak, connected load.
 *
 * @param rules      what each demand rule of the tariff bills; shares in the order of `fans`
 * @param rates      energy prices over the bill's time
 * @param connected  connected load of the bill's time, money
 * @param placing    what the hours of a meter read too seldom may have cost less, and more, money
 * @param moreKwh    what unknown time could add to the energy
 * @param most       what the bill leaves for the fans, money
 */
export function moneyOfFans(
  fans: readonly BilledFan[],
  rules: readonly PeriodDemand[],
  tariff: Tariff,
  rates: RateBreaks,
  { connected, moreKwh, placing, most }: { connected: number; moreKwh: number; placing: PlacingDoubt; most: number },
): Estimate {
  const energy = fans.reduce((sum, one) => sum + one.cost, 0);
  if (Number.isNaN(energy)) return withheld(`The tariff ${tariff.id} has no energy price for part of the time.`);
  const demand = rules.reduce((sum, rule) => sum + rule.cost, 0);
  // Of one fan: energy and demand are wrong together.
  const sds = fans.map(
    ({ fan, cost }, f) =>
      fanRelSd(fan) * cost + fan.energyRelSd * rules.reduce((sum, rule) => sum + rule.shares[f] * rule.cost, 0),
  );
  const value = energy + demand + connected;
  const half = Z90 * Math.hypot(...sds, PEAK_REL_SD * demand);
  // Unknown time could have been run at the dearest hour and on top of the peak, and before the bill on top of what its ratchet sees.
  const powerOf = (some: readonly BilledFan[]) => some.reduce((sum, one) => sum + one.runningKw, 0);
  const moreKw = moreKwh > 0 ? powerOf(fans.filter((one) => one.untoldHours > 0)) : 0;
  const moreBeforeKw = powerOf(fans.filter((one) => one.untoldBefore));
  const moreDemand = rules.reduce((sum, { peakKw, beforeKw, billedKw, ratchet }, r) => {
    const most = (kw: number, more: number) => Math.max(kw, Math.min(kw + more, powerOf(fans)));
    const top = Math.max(most(peakKw, moreKw), ratchet * most(beforeKw, moreBeforeKw));
    return sum + Math.max(0, top - billedKw) * tariff.demand[r].pricePerKw;
  }, 0);
  const upper = value + half + moreKwh * dearestPrice(rates) + placing.more + moreDemand;
  return estimate(value, Math.max(0, value - half - placing.less), Math.max(value + half, Math.min(upper, most)));
}
