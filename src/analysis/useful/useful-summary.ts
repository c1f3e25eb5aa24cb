import { z } from 'zod';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import type { HourClass, UsefulHours } from './useful-hours-types.ts';

/** `usefulHours` of a bin in `summary.json`. */
export const USEFUL_SHAPE = z
  .strictObject({
    dry: number.describe('h'),
    dryInterval: interval,
    rewet: number.describe('h'),
    rewetInterval: interval,
    cool: number.describe('h'),
    coolInterval: interval,
    warm: number.describe('h'),
    warmInterval: interval,
    little: number.describe('h: fan hours whose air could do next to nothing'),
    littleInterval: interval,
    unknown: number.describe('h, measured: fan hours of which air or grain is not known'),
    empty: number.describe('h, measured: fan hours while the bin held no grain'),
    forGoal: number.describe('h: fan hours that worked for the goal'),
    forGoalInterval: interval,
    against: number.describe('h: fan hours that worked against the goal'),
    againstInterval: interval,
    againstShare: number.describe('of all fan hours, fraction'),
    againstShareInterval: interval,
    againstCost: number.describe('money: energy alone'),
    againstCostInterval: interval,
    offWouldHavePaid: number.describe('h: hours with the fan off in which the air could have worked for the goal'),
    offWouldHavePaidInterval: interval,
    moistureThresholdPoints: number.describe('as stated, or the usual one'),
    temperatureThresholdK: number.describe('as stated, or the usual one'),
    why,
  })
  .describe('fan hours by what their air could do to the grain; the seven classes add up to the fan hours');

export function usefulSummary(review: BinReview): z.infer<typeof USEFUL_SHAPE> {
  const of = review.useful ?? null;
  const none = noHours(review);
  const told = (pick: (useful: UsefulHours) => Estimate) => (of === null ? withheld(none) : pick(of));
  const hours = (name: HourClass) =>
    told((useful) => (useful.why === null ? useful.hours[name] : withheld(useful.why)));
  const forGoal = told((one) => one.forGoal);
  const against = told((one) => one.against);
  const againstShare = told((one) => one.againstShare);
  const againstCost = told((one) => one.againstCost);
  const offWouldHavePaid = told((one) => one.offWouldHavePaid);
  return {
    ...both('dry', hours('dry')),
    ...both('rewet', hours('rewet')),
    ...both('cool', hours('cool')),
    ...both('warm', hours('warm')),
    ...both('little', hours('little')),
    unknown: plain(of?.hours.unknown.value),
    empty: plain(of?.hours.empty.value),
    ...both('forGoal', forGoal),
    ...both('against', against),
    ...both('againstShare', againstShare),
    ...both('againstCost', againstCost),
    ...both('offWouldHavePaid', offWouldHavePaid),
    moistureThresholdPoints: plain(of?.limits.moistureWb, 100),
    temperatureThresholdK: plain(of?.limits.temperatureK),
    why: reason(of === null ? none : of.why, forGoal, against, againstShare, againstCost, offWouldHavePaid),
  };
}

/** Why a bin has no useful hours and no rates at all. */
export function noHours({ failure, fan }: BinReview): string {
  if (failure !== null) return `This bin could not be worked out: ${failure}`;
  return fan.hours.why ?? 'No fan of this bin has a log.';
}
