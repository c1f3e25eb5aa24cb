import type { z } from 'zod';
import { withheld } from '../../base/estimate.ts';
import { both, pair, plain, reason } from '../summary-numbers.ts';
import type { BinReview, SeasonReview } from '../types.ts';
import type { BILL_SHAPE, DEMAND_SHAPE, ENERGY_PER_POINT_SHAPE, TARIFF_MONTH_SHAPE } from './money-shape.ts';

/** A bin's energy for what drying did as `summary.json` tells it. */
export function energyPerPointSummary({ unitEnergy, failure }: BinReview): z.infer<typeof ENERGY_PER_POINT_SHAPE> {
  const none = withheld(failure === null ? 'It was not worked out.' : `This bin could not be worked out: ${failure}`);
  const { kwhPerPoint, kwhPerBushelPoint, kwhPerKgWater } = unitEnergy ?? {
    kwhPerPoint: none,
    kwhPerBushelPoint: none,
    kwhPerKgWater: none,
  };
  return {
    ...both('kwhPerPoint', kwhPerPoint),
    ...both('kwhPerBushelPoint', kwhPerBushelPoint),
    ...both('kwhPerKgWater', kwhPerKgWater),
    stands: unitEnergy?.plausible.stands ?? null,
    likely: [...(unitEnergy?.plausible.text ?? [])],
    why: reason(null, kwhPerPoint, kwhPerBushelPoint, kwhPerKgWater),
  };
}

export function billsSummary({ bills }: SeasonReview): z.infer<typeof BILL_SHAPE>[] {
  return (bills ?? []).map((bill) => ({
    tariff: bill.tariffId,
    from: new Date(bill.fromMs).toISOString(),
    to: new Date(bill.toMs).toISOString(),
    billedKwh: plain(bill.billedKwh),
    billedKw: plain(bill.billedKw),
    amount: plain(bill.amount),
    ...both('fansKwh', bill.fansKwh),
    untoldHours: plain(bill.untoldHours),
    ...both('share', bill.share),
    ...both('restKwh', bill.restKwh),
    ...both('fansMoney', bill.fansMoney),
    fixed: plain(bill.fixed),
    ...both('restMoney', bill.restMoney),
    cause: bill.cause,
    leftOut: bill.leftOut,
    why: reason(null, bill.fansKwh, bill.share, bill.restKwh, bill.fansMoney, bill.restMoney),
  }));
}

export function demandSummary({ demandWays, tariffMonths }: SeasonReview): z.infer<typeof DEMAND_SHAPE>[] {
  return (demandWays ?? []).map((one) => ({
    tariff: one.tariffId,
    rule: one.rule + 1,
    month: one.month,
    peakKw: plain(one.asRun.peakKw),
    peakKwInterval: pair(one.asRun.peak.interval),
    billedKw: plain(one.asRun.billedKw),
    billedKwInterval: pair(
      tariffMonths.find(({ tariffId, month }) => tariffId === one.tariffId && month === one.month)?.demand[one.rule]
        ?.told?.billed.interval,
    ),
    ...both('cost', one.asRun.cost),
    ...both('startsApartCost', one.startsApart.cost),
    ...both('inTurnsCost', one.inTurns.cost),
    ...both('leastCost', one.leastCost),
    ...both('saving', one.saving),
    why: one.saving.why,
  }));
}

export function tariffSummary({ tariffMonths }: SeasonReview): z.infer<typeof TARIFF_MONTH_SHAPE>[] {
  return tariffMonths.map(({ told, ...one }) => ({
    tariff: one.tariffId,
    month: one.month,
    energyKwh: plain(one.energyKwh),
    energyKwhInterval: pair(told?.energyKwh.interval),
    energyCost: plain(one.energyCost),
    energyCostInterval: pair(told?.energyCost.interval),
    demandCost: plain(one.demand.reduce((sum, rule) => sum + rule.cost, 0)),
    demandCostInterval: pair(told?.demandCost.interval),
    fixed: plain(one.fixed),
    connected: plain(one.connected),
    minimumTopUp: plain(one.minimumTopUp),
    minimumTopUpInterval: pair(told?.minimumTopUp.interval),
    total: plain(one.total),
    totalInterval: pair(told?.total.interval),
    demand: one.demand.map((rule, r) => ({
      rule: r + 1,
      began: rule.atMs === null ? null : new Date(rule.atMs).toISOString(),
      peakKw: plain(rule.peakKw),
      peakKwInterval: pair(rule.told?.peak.interval),
      billedKw: plain(rule.billedKw),
      billedKwInterval: pair(rule.told?.billed.interval),
      cost: plain(rule.cost),
      costInterval: pair(rule.told?.cost.interval),
    })),
  }));
}
