import { z } from 'zod';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import {
  DAY_BAND_H,
  type HourClass,
  type HourGroup,
  NO_PART,
  OUTDOOR_BANDS,
  type UsefulHours,
} from './useful-hours-types.ts';

const GROUP_SHAPE = z.strictObject({
  by: z.enum(['month', 'hour of the day', 'outdoor air']),
  part: z.string().describe('2024-10; 03-06, local; 10 to 20 C, 60 to 80 %; not known'),
  hours: number.describe('h'),
  hoursInterval: interval,
  forGoal: number.describe('h'),
  forGoalInterval: interval,
  against: number.describe('h'),
  againstInterval: interval,
  unclassed: number.describe('h, measured: hours that nobody can class, with those of an empty bin'),
});

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
    groups: z.array(GROUP_SHAPE).describe('the fan hours by month, by hour of the day, by outdoor air'),
    why,
  })
  .describe('fan hours by what their air could do to the grain; the classes that are told add up to the fan hours');

export function usefulSummary(review: BinReview): z.infer<typeof USEFUL_SHAPE> {
  const of = review.useful ?? null;
  const none = noHours(review);
  const told = (pick: (useful: UsefulHours) => Estimate) => (of === null ? withheld(none) : pick(of));
  const hours = (name: HourClass) => told((useful) => useful.hours[name]);
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
    groups: of === null ? [] : groupsOf(of),
    why: reason(of === null ? none : of.why, forGoal, against, againstShare, againstCost, offWouldHavePaid),
  };
}

function groupsOf(of: UsefulHours): z.infer<typeof GROUP_SHAPE>[] {
  const told = (by: z.infer<typeof GROUP_SHAPE>['by'], groups: readonly HourGroup[], part: (key: string) => string) =>
    groups.map((one) => ({
      by,
      part: part(one.key),
      ...both('hours', one.hours),
      ...both('forGoal', of.why === null ? one.forGoal : withheld(of.why)),
      ...both('against', of.why === null ? one.against : withheld(of.why)),
      unclassed: plain(one.unclassed),
    }));
  return [
    ...told('month', of.months, String),
    ...told('hour of the day', of.hoursOfDay, (key) =>
      key === NO_PART ? 'not known' : [Number(key), Number(key) + DAY_BAND_H].map(hourText).join('-'),
    ),
    ...told('outdoor air', of.outdoor, outdoorPart),
  ];
}

const hourText = (hour: number) => String(hour).padStart(2, '0');

/** `2 1`: the third band of temperature, the second of humidity. */
function outdoorPart(key: string): string {
  if (key === NO_PART) return 'not known';
  const [t, h] = key.split(' ').map(Number);
  const percent = OUTDOOR_BANDS.rh.map((end) => Math.round(100 * end));
  return `${bandText(OUTDOOR_BANDS.tempC, t)} C, ${bandText(percent, h)} %`;
}

function bandText(ends: readonly number[], band: number): string {
  if (band === 0) return `under ${ends[0]}`;
  return band === ends.length ? `from ${ends[band - 1]}` : `${ends[band - 1]} to ${ends[band]}`;
}

/** Why a bin has no useful hours and no rates at all. */
export function noHours({ failure, fan }: BinReview): string {
  if (failure !== null) return `This bin could not be worked out: ${failure}`;
  return fan.hours.why ?? 'No fan of this bin has a log.';
}
