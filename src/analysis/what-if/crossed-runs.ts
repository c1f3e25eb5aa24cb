import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { statedHeaters } from '../../season/stated-heaters.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { startMoistureDb } from '../../simulation/run/start-moisture.ts';
import { bushelsOf } from '../grain/per-bushel.ts';
import { binLog } from '../model/bin-log.ts';
import { burntHours } from '../model/burnt-hours.ts';
import { loggedShares } from '../model/logged-shares.ts';
import { runSpecOf } from '../model/run-spec-of.ts';
import type { BinReview } from '../types.ts';
import { type BinRun, type Carried, carriedWays } from './carried-ways.ts';
import { crossedParts } from './crossed-parts.ts';
import type { Crossed, CrossedBin, CrossedCell } from './crossed-types.ts';
import { type BinWhatIf, NO_PRICE } from './what-if-types.ts';

/** Less than this is no drying to share a cost by, points. */
const FEWEST_POINTS = 0.3;

/** Every bin's way to run its fans on the grain, fan and air of every bin whose model is trusted. */
export function crossedRuns(
  loaded: LoadedSeason,
  reviews: readonly BinReview[],
  whatIf: readonly BinWhatIf[],
): Crossed {
  const ways = carriedWays(reviews.map((review) => runOf(loaded, review)));
  const bins = whatIf.map((of) => {
    const review = reviews.find(({ bin }) => bin.id === of.binId);
    return review === undefined
      ? { binId: of.binId, cells: [], why: 'There is no such bin.' }
      : crossedBin(loaded, review, of, ways);
  });
  const goals = new Map(reviews.map(({ bin }) => [bin.id, bin.goal]));
  return {
    ways: ways.map(({ id, title, binIds, why }) => ({ id, title, binIds, why })),
    bins,
    parts: crossedParts(bins, goals),
  };
}

function runOf(loaded: LoadedSeason, review: BinReview): BinRun {
  const { id, name, strategy, fanIds } = review.bin;
  // Hours need neither airflow nor a fit: a bin without a static pressure is run by the clock as well.
  const log = binLog(loaded, review);
  if (typeof log === 'string') return { binId: id, binName: name, strategy, logged: null, why: log, fanIds };
  const heated = statedHeaters(loaded.season, review.bin).length > 0;
  const burnt = burntHours(log) ?? undefined;
  const logged = { share: loggedShares(log), startMs: log.weather.hours.startMs, heated, burnt };
  return { binId: id, binName: name, strategy, logged, why: null, fanIds };
}

function crossedBin(loaded: LoadedSeason, review: BinReview, of: BinWhatIf, ways: readonly Carried[]): CrossedBin {
  const { binId, model } = of;
  if (of.why !== null || model.fitted === null) return { binId, cells: [], why: of.why ?? model.why };
  const found = runSpecOf(loaded, review, model.fitted, model.mayBes);
  if (found.spec === null) return { binId, cells: [], why: found.why };
  const bushels = bushelsOf(review.grain)?.value ?? null;
  return { binId, cells: cellsOf(found.specs, binId, ways, bushels), why: null };
}

/**
 * One bin's row.
 *
 * @param specs    the bin as fitted, then each that it may be
 * @param bushels  legal; null where not known
 */
export function cellsOf(
  specs: readonly RunSpec[],
  binId: string,
  ways: readonly Carried[],
  bushels: number | null,
): CrossedCell[] {
  const outcomes = ways.map((way) => {
    const strategy = way.on(specs[0]);
    return strategy === null ? null : specs.map((one) => runSeason(one, strategy).outcome);
  });
  const own = outcomes.find((_, w) => ways[w].binIds.includes(binId)) ?? null;
  return ways.map((way, w) => {
    const of = outcomes[w];
    const mine = way.binIds.includes(binId);
    if (of === null) {
      const none = withheld(way.why ?? 'This bin has no heater.');
      const untold = { perBushel: none, perBushelPoint: none, overOwn: none, runCosts: null };
      const missing = { ...untold, reached: null, reaching: 0, runs: 0 };
      return { wayId: way.id, own: mine, ...missing };
    }
    return {
      wayId: way.id,
      own: mine,
      perBushel: perBushel(of, bushels),
      perBushelPoint: perPoint(specs, of, bushels),
      overOwn: overOwn(of, own),
      runCosts: bushels === null || !(bushels > 0) ? null : of.map(({ cost }) => cost / bushels),
      reached: of[0].reachedTarget,
      reaching: of.filter(({ reachedTarget }) => reachedTarget).length,
      runs: of.length,
    };
  });
}

/** The first is the value, the others its range. */
function ranged(values: readonly number[], why: string): Estimate {
  if (values.some((value) => !Number.isFinite(value))) return withheld(why);
  return estimate(values[0], Math.min(...values), Math.max(...values));
}

function perBushel(of: readonly Outcome[], bushels: number | null): Estimate {
  if (bushels === null || !(bushels > 0)) return withheld('The bushels are not known.');
  return ranged(
    of.map(({ cost }) => cost / bushels),
    NO_PRICE,
  );
}

function perPoint(specs: readonly RunSpec[], of: readonly Outcome[], bushels: number | null): Estimate {
  if (specs[0].goal !== 'dry') return withheld('A cost for each point is told only where the goal is to dry.');
  if (bushels === null || !(bushels > 0)) return withheld('The bushels are not known.');
  const points = of.map(({ endMoistureWb }, i) => 100 * (wetFromDry(startMoistureDb(specs[i])) - endMoistureWb));
  if (points.some((one) => !(one >= FEWEST_POINTS))) return withheld('So run the bin hardly dries.');
  return ranged(
    of.map(({ cost }, i) => cost / bushels / points[i]),
    NO_PRICE,
  );
}

function overOwn(of: readonly Outcome[], own: readonly Outcome[] | null): Estimate {
  if (own === null) return withheld('How this bin was run is not known.');
  if (own.some(({ cost }) => cost === 0)) return withheld('Run its own way the bin costs nothing.');
  return ranged(
    of.map(({ cost }, i) => cost / own[i].cost),
    NO_PRICE,
  );
}
