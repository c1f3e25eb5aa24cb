import { withheld } from '../base/estimate.ts';
import type { Bin } from '../season/season.ts';
import { missing } from './airflow/bin-airflow.ts';
import { spanList, toFanSpans } from './fan/spans.ts';
import { missingGrain } from './grain/grain-amount.ts';
import type { BinReview, MomentMean } from './types.ts';
import { missingWater } from './water/bin-water.ts';

/** A bin whose working-out broke: every number missing, with the reason, so that the other bins stand. */
export function failedBin(bin: Bin, reason: string): BinReview {
  const why = `This bin could not be worked out: ${reason}`;
  const none = withheld(why);
  const moment: MomentMean = { value: null, window: null, stillAir: false, readings: 0, sensors: 0, fanOn: null };
  return {
    bin,
    failure: reason,
    grain: missingGrain(why),
    fan: {
      fans: [],
      spans: toFanSpans(spanList()),
      hours: none,
      unknownHours: null,
      starts: null,
      energyKwh: none,
      energyFrom: null,
      energyCost: none,
      demandCost: none,
      connectedCost: none,
      heatCost: none,
      cost: none,
      kwhPerBushel: none,
      costPerBushel: none,
      why,
      months: [],
    },
    moisture: {
      start: moment,
      end: moment,
      pointsRemoved: none,
      perHundredFanHours: none,
      shares: [],
      errorParts: [],
      degreesOfFreedom: null,
      cables: [],
      overdryingLossBushels: none,
      overdryingLoss: none,
      daily: [],
      notes: [],
      why,
    },
    temperature: { start: moment, end: moment, why },
    unitCosts: {
      costPerPoint: none,
      perBushelPoint: none,
      costPerPointAdded: none,
      perBushelPointAdded: none,
      why,
      whyAdded: why,
    },
    fronts: { campaigns: [], why },
    airflow: missing(why),
    water: missingWater(why),
  };
}
