import { toLocalMs, zoneOf } from '../../base/zone.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { reachedDay } from '../strategies/reached-day.ts';
import { pair, plain } from '../summary-numbers.ts';
import type { BinSummary, Summary } from '../summary-shape.ts';
import type { SeasonReview } from '../types.ts';
import type { BinWhatIf, StrategyOutcome } from './what-if-types.ts';

export const NOT_ASKED = 'Models were left out of this review (--no-model).';

/** The block `model` of a bin: how near its bed came to what it had not seen. */
export function modelSummary(review: SeasonReview, binId: string): BinSummary['model'] {
  const told = review.whatIf?.find((one) => one.binId === binId);
  if (told === undefined) {
    const why = review.whatIf === undefined ? NOT_ASKED : 'The model of this bin could not be made.';
    return { temperatureRmseC: null, moistureRmsePct: null, trusted: null, why };
  }
  const { unseen, trusted, why } = told.model;
  return {
    temperatureRmseC: plain(unseen?.misfit.temperatureK),
    moistureRmsePct: plain(unseen?.misfit.moisturePoints),
    trusted,
    why,
  };
}

/** The list `strategies`: this season's runs of every bin whose model is trusted. */
export function strategiesSummary(
  { season }: LoadedSeason,
  { whatIf }: SeasonReview,
): Pick<Summary, 'strategies' | 'strategiesWhy'> {
  const zone = zoneOf(season.site.timeZone);
  const day = (ms: number) => new Date(toLocalMs(zone, reachedDay(ms))).toISOString().slice(0, 10);
  const row = (binId: string, { id, outcome, cost, reachedMs }: StrategyOutcome): Summary['strategies'][number] => ({
    bin: binId,
    strategy: id,
    weather: 'season',
    fanHours: plain(outcome.fanHours),
    energyKwh: plain(outcome.energyKwh),
    cost: plain(cost.value),
    costInterval: pair(cost.interval),
    endMoisturePct: plain(outcome.endMoistureWb, 100),
    topMoisturePct: plain(outcome.topMoistureWb, 100),
    bottomMoisturePct: plain(outcome.bottomMoistureWb, 100),
    endTemperatureC: plain(outcome.endTempC),
    dryMatterLossPct: plain(outcome.lossMean, 100),
    storageLifeUsedPct: plain(outcome.lifeUsed, 100),
    reachedTarget: outcome.reachedTarget,
    reachedOn: reachedMs === null ? null : day(reachedMs),
    why:
      cost.why ?? (Number.isNaN(outcome.lossMean) ? 'No rule for the loss of dry matter of this crop is known.' : null),
  });
  const strategies = (whatIf ?? []).flatMap((bin) => runsOf(bin).map((one) => row(bin.binId, one)));
  const strategiesWhy = whatIf === undefined ? NOT_ASKED : 'No bin has a model that can be trusted.';
  return { strategies, strategiesWhy: strategies.length > 0 ? null : strategiesWhy };
}

/** Everything that was run for a bin, as logged first, the search in hindsight last. */
export function runsOf({ logged, strategies, hindsight }: BinWhatIf): StrategyOutcome[] {
  return [logged, ...strategies, hindsight].filter((one) => one !== null);
}
