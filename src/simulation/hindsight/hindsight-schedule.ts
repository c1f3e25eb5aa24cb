import { runSeason } from '../run/run-season.ts';
import type { RunSpec } from '../run/run-spec.ts';
import { scheduled } from '../strategies/scheduled.ts';
import type { Strategy } from '../strategies/strategy.ts';
import { untilReached } from '../strategies/until-reached.ts';
import { bestInHindsight, type HindsightOptions } from './best-in-hindsight.ts';

export const IN_HINDSIGHT = 'best-in-hindsight';

/** A schedule to run, with what it does in each hour written out. */
export interface WrittenSchedule extends Strategy {
  /** 0: off, 1: fan, 2: fan and heater, [hours of the run] */
  ways: Uint8Array;
}

/**
 * The best schedule in hindsight as a strategy to run, searched from what the given strategies did, so that none that reaches
 * ends cheaper.
 *
 * @param logged  share of each hour in which the fan ran by its log, one more schedule to search from, [hours of the run]
 * @param byHour  hour by which it must be there; the end of the run
 * @param search  how far to search, see `HindsightOptions`
 * @returns       null where every schedule tried uses up more storage life than allowed
 */
export function hindsightSchedule(
  spec: RunSpec,
  strategies: readonly Strategy[],
  {
    logged,
    byHour,
    search,
  }: { logged?: Float64Array; byHour?: number; search?: Pick<HindsightOptions, 'widths' | 'mostHours'> } = {},
): WrittenSchedule | null {
  const seeds = strategies.map((one) => fanOf(spec, untilReached(one, spec.goal)));
  const best = bestInHindsight(spec, { seeds: logged === undefined ? seeds : [logged, ...seeds], byHour, ...search });
  if (best === null) return null;
  const share = Float64Array.from(best.ways, (way) => (way > 0 ? 1 : 0));
  const heat = best.ways.map((way) => (way === 2 ? 1 : 0));
  return { ...scheduled(IN_HINDSIGHT, 'Best in hindsight', share, heat), ways: best.ways };
}

function fanOf(spec: RunSpec, strategy: Strategy): Float64Array {
  const { trace } = runSeason(spec, strategy, {}, { trace: true });
  if (trace === null) throw new Error('a run that was asked for its trace gave none');
  return trace.fan;
}
