import type { Zone } from '../../base/zone.ts';
import { DEMAND_MS, type MonthDemand, ratchetFloor, ratchetMonth } from '../../money/demand.ts';
import { localMoment, localMonths } from '../../money/local-time.ts';
import type { DemandRule } from '../../money/tariff.ts';
import { whenHolds } from '../../money/when-holds.ts';
import { FAN_UNKNOWN, type FanSeason } from '../types.ts';
import type { TariffBill } from './tariff-bill.ts';

/** By how much a fan's unknown time could raise a month's peak and what is billed for it, kW. */
export interface UnknownDemand {
  peak: number;
  billed: number;
}

/**
 * What unknown time leaves open of one rule's months. A month's peak may be higher by the power of the fans it is unknown of while
 * the rule holds, but no higher than all fans together; what is billed may be higher by that, or by the ratchet on such a peak of
 * the eleven months before, as far as it exceeds what is billed anyway.
 *
 * @param demand  as run, or in another way: the months of the bill
 * @returns       [months]
 */
export function unknownDemand(
  bill: TariffBill,
  rule: DemandRule,
  demand: readonly Pick<MonthDemand, 'peakKw' | 'billedKw'>[],
): UnknownDemand[] {
  const { zone } = bill;
  const ran = bill.fans.filter((fan) => fan.onHours > 0);
  const power = (of: readonly FanSeason[]) => of.reduce((sum, fan) => sum + fan.energyKwh / fan.onHours, 0);
  const tops: { peakKw: number }[] = [];
  return localMonths(zone, bill.fromMs, bill.toMs).map(({ month, fromMs, toMs }, m) => {
    const { peakKw, billedKw } = demand[m];
    const unknown = power(ran.filter((fan) => hasUnknown(fan, rule, zone, fromMs, toMs)));
    const peak = Math.min(unknown, Math.max(0, power(ran) - peakKw));
    const floor = ratchetFloor(rule, month, ratchetMonth(tops)?.peakKw ?? 0);
    tops.push({ peakKw: peakKw + peak });
    return { peak, billed: Math.max(0, Math.max(peakKw + peak, floor) - billedKw) };
  });
}

/**
 * What one fan may be billed for at most by its unknown time: its own power in months in which it has some, the ratchet on that in
 * the eleven months after.
 *
 * @returns  kW, [months of the bill]; 0 where nothing is unknown
 */
export function unknownOfFan(bill: TariffBill, rule: DemandRule, fan: FanSeason, runningKw: number): number[] {
  const { zone } = bill;
  const tops: { peakKw: number }[] = [];
  return localMonths(zone, bill.fromMs, bill.toMs).map(({ month, fromMs, toMs }) => {
    const own = hasUnknown(fan, rule, zone, fromMs, toMs) ? runningKw : 0;
    const floor = ratchetFloor(rule, month, ratchetMonth(tops)?.peakKw ?? 0);
    tops.push({ peakKw: own });
    return Math.max(own, floor);
  });
}

/** Does a fan have unknown time in [fromMs, toMs) in a quarter hour that the rule bills? */
function hasUnknown({ spans }: FanSeason, rule: DemandRule, zone: Zone, fromMs: number, toMs: number): boolean {
  return spans.state.some((state, k) => {
    if (state !== FAN_UNKNOWN) return false;
    const last = Math.min(spans.endMs[k], toMs);
    for (let at = Math.max(spans.startMs[k], fromMs); at < last; at = nextQuarter(at)) {
      if (whenHolds(rule.when, localMoment(zone, Math.floor(at / DEMAND_MS) * DEMAND_MS))) return true;
    }
    return false;
  });
}

const nextQuarter = (ms: number) => (Math.floor(ms / DEMAND_MS) + 1) * DEMAND_MS;
