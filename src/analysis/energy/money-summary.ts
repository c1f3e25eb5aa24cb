import type { z } from 'zod';
import { withheld } from '../../base/estimate.ts';
import { both, plain, reason } from '../summary-numbers.ts';
import type { BinReview, SeasonReview } from '../types.ts';
import type { BILL_SHAPE, DEMAND_SHAPE, ENERGY_PER_POINT_SHAPE } from './money-shape.ts';

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

export function demandSummary({ demandWays }: SeasonReview): z.infer<typeof DEMAND_SHAPE>[] {
  return (demandWays ?? []).map((one) => ({
    tariff: one.tariffId,
    rule: one.rule + 1,
    month: one.month,
    peakKw: plain(one.asRun.peakKw),
    billedKw: plain(one.asRun.billedKw),
    ...both('cost', one.asRun.cost),
    ...both('startsApartCost', one.startsApart.cost),
    ...both('inTurnsCost', one.inTurns.cost),
    leastCost: plain(one.leastCost),
    ...both('saving', one.saving),
  }));
}
