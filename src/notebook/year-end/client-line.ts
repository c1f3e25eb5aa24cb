import type { SeasonReview } from '../../analysis/types.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import { cropOf } from '../../grain/crops.ts';
import { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { allFindings } from '../all-findings.ts';
import { isToDo } from '../load-tables.ts';
import { grainAmount, perGrain } from '../per-grain.ts';
import { fanHoursTotal } from '../shared-fans.ts';
import { type KnownTotal, knownTotal } from '../words.ts';
import { grouped } from './grouped.ts';
import { isClear, worthTelling } from './measure.ts';
import { measuresOf } from './measures-of.ts';

/** A bin as the consultant's summary ranks it. */
export interface ClientBin {
  name: string;
  crop: string;
  points: Estimate;
  /** money for each bushel-point or tonne-point, in the summary's units */
  perPoint: Estimate;
}

/** What the consultant's summary tells of one client; nothing of it goes into another client's report. */
export interface ClientLine {
  /** name of the client's folder */
  client: string;
  farm: string | null;
  season: string;
  currency: string;
  timeZone: string;
  bins: number;
  grain: KnownTotal;
  hours: KnownTotal;
  energyKwh: KnownTotal;
  cost: KnownTotal;
  /** over the grain of the bins whose cost and grain are known */
  costPerGrain: Estimate;
  overdrying: KnownTotal;
  ranked: readonly ClientBin[];
  /** of the measure that would save most, money a year; null where none is clear */
  worth: Estimate | null;
  /** largest first, whole sentences */
  findings: readonly string[];
  todo: readonly string[];
  /** findings in the logs that ask for something */
  logFindings: number;
  /** bins whose model is trusted; null where models were left out */
  trusted: number | null;
  /** what broke, each a line */
  failures: readonly string[];
}

/** @param system  the units of the consultant's summary, whatever the client's own report shows */
export function clientLine(
  loaded: LoadedSeason,
  review: SeasonReview,
  client: string,
  failures: readonly string[],
  system: 'us' | 'si',
): ClientLine {
  const { season } = loaded;
  const { bins, whatIf } = review;
  const units = new Units(system, season.currency, season.site.timeZone);
  const measures = grouped(worthTelling(measuresOf(loaded, review, units), bins), (saving) =>
    units.say('money', saving),
  ).filter(isClear);
  const both = bins.filter((one) => one.fan.cost.value !== null && one.grain.bushels !== null);
  const grainOf = (some: typeof bins) => knownTotal(some.map((one) => grainAmount(one, units)));
  const spent = knownTotal(both.map((one) => one.fan.cost)).total;
  return {
    client,
    farm: season.preparedFor,
    season: season.title,
    currency: season.currency,
    timeZone: season.site.timeZone,
    bins: bins.length,
    grain: grainOf(bins),
    hours: fanHoursTotal(bins),
    energyKwh: knownTotal(bins.map((one) => one.fan.energyKwh)),
    cost: knownTotal(bins.map((one) => one.fan.cost)),
    costPerGrain:
      both.length === 0
        ? withheld(bins.find((one) => one.fan.cost.value === null)?.fan.cost.why ?? 'The grain is not known.')
        : ratioInterval(spent, grainOf(both).total, 'There may be no grain.'),
    overdrying: knownTotal(bins.map((one) => one.moisture.overdryingLoss)),
    ranked: bins.map((one) => ({
      name: one.bin.name,
      crop: cropOf(one.bin.grain.crop).name.toLowerCase(),
      points: one.moisture.pointsRemoved,
      perPoint: perGrain(one.unitCosts.perBushelPoint, one, units),
    })),
    worth: measures[0]?.saving ?? null,
    findings: measures.map((one) => one.seen),
    todo: measures.map((one) => one.todo),
    logFindings: allFindings(loaded, review).filter(isToDo).length,
    trusted: whatIf === undefined ? null : whatIf.filter(({ why }) => why === null).length,
    failures,
  };
}
