import { z } from 'zod';
import { scaled, withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import { missingCondition } from './bin-condition.ts';
import { alertText } from './condition-alerts.ts';

/** `condition` of a bin in `summary.json`. */
export const CONDITION_SHAPE = z
  .strictObject({
    dryMatterLossPct: number.describe('% of the dry matter, mean of the grain, by the crop’s storage rule'),
    dryMatterLossPctInterval: interval,
    worstLayerLossPct: number.describe('% of the dry matter, at the sensor that used most of its storage time'),
    worstLayerLossPctInterval: interval,
    storageTimeUsedPct: number.describe('% of the allowable storage time, mean of the grain'),
    storageTimeUsedPctInterval: interval,
    worstStorageTimeUsedPct: number.describe('% of the allowable storage time, at the sensor that used most of it'),
    worstStorageTimeUsedPctInterval: interval,
    worstCable: z.string().nullable(),
    worstSensor: z.int().nullable().describe('counted from 1, from the floor up'),
    warmedByItself: z
      .array(
        z.strictObject({
          cable: z.string(),
          sensor: z.int(),
          heightM: number,
          from: z.string().describe('local day'),
          to: z.string().describe('local day'),
          riseK: number.describe('K, measured'),
          aboveK: number.describe(
            'K, measured: above the warmest of what lay near it at the beginning and what came in from outside',
          ),
        }),
      )
      .nullable()
      .describe(
        'places that warmed with the fan at rest beyond what air and grain beside them explain; null where none could be judged',
      ),
    warmerThanOutdoorsDays: number.describe(
      'd: mean grain 11.1 K and more above the outdoor mean of the 30 days before',
    ),
    warmerThanOutdoorsDaysInterval: interval,
    insectDays: number.describe('d: days of the grain at 13 to 35 °C'),
    insectDaysInterval: interval,
    bestInsectDays: number.describe('d: those of them at 25 to 33 °C, where insects grow best'),
    bestInsectDaysInterval: interval,
    roofWetHours: number.describe('h: fan hours in which the leaving air could wet the roof'),
    roofWetHoursInterval: interval,
    coldestWeekC: number.describe('°C: mean grain of its coldest week'),
    coldestWeekCInterval: interval,
    warmedSinceK: number.describe('K: mean grain of the last week over that of its coldest'),
    warmedSinceKInterval: interval,
    alerts: z.array(z.string()).nullable(),
    why,
  })
  .describe('how the grain kept');

export function conditionSummary(review: BinReview): z.infer<typeof CONDITION_SHAPE> {
  const of = review.condition ?? missingCondition(review.failure ?? 'It was not worked out.');
  const { age, warming, outdoors, insects } = of;
  const watched = warming.why === null;
  const day = (ms: number) => new Date(ms).toISOString().slice(0, 10);
  return {
    ...both('dryMatterLossPct', scaled(age.loss, 100)),
    ...both('worstLayerLossPct', scaled(age.worstLoss, 100)),
    ...both('storageTimeUsedPct', scaled(age.lifeUsed, 100)),
    ...both('worstStorageTimeUsedPct', scaled(age.worstLifeUsed, 100)),
    worstCable: age.worst?.cable ?? null,
    worstSensor: age.worst?.sensor ?? null,
    warmedByItself: watched
      ? warming.found.map(({ cable, sensor, heightM, span, riseK, aboveK }) => ({
          cable,
          sensor,
          heightM: plain(heightM),
          from: day(span.fromMs),
          to: day(span.toMs - 1),
          riseK: plain(riseK),
          aboveK: plain(aboveK),
        }))
      : null,
    ...both('warmerThanOutdoorsDays', outdoors.days),
    ...both('insectDays', insects.develop),
    ...both('bestInsectDays', insects.best),
    ...both('roofWetHours', of.roofHours),
    ...both('coldestWeekC', of.coldest),
    ...both('warmedSinceK', of.warmedSinceK),
    alerts: of.why === null ? of.alerts.map(alertText) : null,
    why: reason(
      of.why,
      age.lifeUsed,
      age.loss,
      watched ? { value: 0, interval: null, why: null } : withheld(warming.why ?? ''),
      outdoors.days,
      insects.develop,
      of.roofHours,
      of.coldest,
    ),
  };
}
