import type { SeasonReview } from '../../analysis/types.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { cropOf } from '../../grain/crops.ts';
import { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { isToDo } from '../load-tables.ts';
import { asGrain, perGrain } from '../per-grain.ts';
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
  bins: number;
  grain: KnownTotal;
  hours: KnownTotal;
  energyKwh: KnownTotal;
  cost: KnownTotal;
  /** over the grain of the bins whose cost and grain are known */
  costPerGrain: Estimate;
  overdrying: KnownTotal;
  ranked: readonly ClientBin[];
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
  const { season, load } = loaded;
  const { bins, whatIf } = review;
  const units = new Units(system, season.currency, season.site.timeZone);
  const measures = grouped(worthTelling(measuresOf(loaded, review, units), bins), (saving) =>
    units.say('money', saving),
  ).filter(isClear);
  const grainOf = (one: (typeof bins)[number]): Estimate =>
    one.grain.bushels === null
      ? withheld(one.grain.why ?? 'Not known.')
      : asGrain({ value: one.grain.bushels, interval: one.grain.bushelsInterval ?? null, why: null }, one, units);
  const both = bins.filter((one) => one.fan.cost.value !== null && one.grain.bushels !== null);
  const grain = both.reduce((sum, one) => sum + Number(grainOf(one).value), 0);
  const spent = knownTotal(both.map((one) => one.fan.cost)).total;
  const each = (of: number) => of / grain;
  return {
    client,
    farm: season.preparedFor,
    season: season.title,
    currency: season.currency,
    bins: bins.length,
    grain: knownTotal(bins.map(grainOf)),
    hours: knownTotal(bins.map((one) => one.fan.hours)),
    energyKwh: knownTotal(bins.map((one) => one.fan.energyKwh)),
    cost: knownTotal(bins.map((one) => one.fan.cost)),
    costPerGrain:
      spent.value === null || grain <= 0
        ? withheld(bins.find((one) => one.fan.cost.value === null)?.fan.cost.why ?? 'The grain is not known.')
        : {
            value: each(spent.value),
            interval: spent.interval === null ? null : [each(spent.interval[0]), each(spent.interval[1])],
            why: null,
          },
    overdrying: knownTotal(bins.map((one) => one.moisture.overdryingLoss)),
    ranked: bins.map((one) => ({
      name: one.bin.name,
      crop: cropOf(one.bin.grain.crop).name.toLowerCase(),
      points: one.moisture.pointsRemoved,
      perPoint: perGrain(one.unitCosts.perBushelPoint, one, units),
    })),
    findings: measures.map((one) => one.seen),
    todo: measures.map((one) => one.todo),
    logFindings: load.findings.filter(isToDo).length,
    trusted: whatIf === undefined ? null : whatIf.filter(({ why }) => why === null).length,
    failures,
  };
}
