import { runSeason } from '../run/run-season.ts';
import type { RunSpec } from '../run/run-spec.ts';
import { asLogged } from '../strategies/as-logged.ts';
import { scheduled } from '../strategies/scheduled.ts';
import type { Strategy } from '../strategies/strategy.ts';
import { untilReached } from '../strategies/until-reached.ts';
import { bestInHindsight, type HindsightOptions } from './best-in-hindsight.ts';
import { heldAgainst } from './held-against.ts';
import { limitsOf } from './limits-of.ts';

export const IN_HINDSIGHT = 'best-in-hindsight';

/** A schedule to run, with what it does in each hour written out. */
export interface WrittenSchedule extends Strategy {
  /** 0: off, 1: fan, 2: fan and heater, [hours of the run] */
  ways: Uint8Array;
}

/** An hour in which the fan ran for more than this share counts as run: a search runs hours whole. */
const ON = 0.5;

/**
 * The best schedule in hindsight as a strategy to run, searched from what the given strategies did, so that none that reaches
 * ends cheaper. A bin to be cooled has a day by which it has to be cold, and how far its grain may age (`heldAgainst`).
 *
 * @param logged  share of each hour in which the fan ran by its log, one more schedule to search from, [hours of the run]
 * @param named   of `strategies`, the one that is told beside the schedule; the cheapest that reaches
 * @param search  how far to search, see `HindsightOptions`
 * @returns       null where every schedule tried uses up more storage life than allowed
 */
export function hindsightSchedule(
  spec: RunSpec,
  strategies: readonly Strategy[],
  {
    logged,
    named,
    search,
  }: { logged?: Float64Array; named?: Strategy; search?: Pick<HindsightOptions, 'widths' | 'mostHours'> } = {},
): WrittenSchedule | null {
  const rules = strategies.map((one) => untilReached(one, spec.goal));
  const log = logged === undefined ? null : asLogged(spec, logged);
  const rule = named === undefined ? undefined : rules[strategies.indexOf(named)];
  const held = heldAgainst(spec, rules, { named: rule, logged: log });
  const best = bestInHindsight(spec, {
    ...search,
    seeds: [...(log === null ? [] : [log]), ...rules].map((one) => waysOf(spec, one)),
    ...(held === null ? {} : { coldBy: held.byHour, limits: limitsOf(spec, held.lifeUsed, held.lossMean) }),
  });
  return best === null ? null : writtenSchedule(best.ways);
}

/** Ways by the hour as a strategy. */
export function writtenSchedule(ways: Uint8Array): WrittenSchedule {
  const share = Float64Array.from(ways, (way) => (way > 0 ? 1 : 0));
  const heat = ways.map((way) => (way === 2 ? 1 : 0));
  return { ...scheduled(IN_HINDSIGHT, 'Best in hindsight', share, heat), ways };
}

/** What a strategy did in whole hours, its heater too. */
function waysOf(spec: RunSpec, strategy: Strategy): Uint8Array {
  const { heater } = strategy;
  const heat = new Uint8Array(spec.endHour);
  const watched: Strategy =
    heater === undefined
      ? strategy
      : {
          ...strategy,
          heater(view, parameters, memory) {
            const burns = heater(view, parameters, memory);
            heat[view.hourOfRun] = burns ? 1 : 0;
            return burns;
          },
        };
  const { trace } = runSeason(spec, watched, {}, { trace: true });
  if (trace === null) throw new Error('a run that was asked for its trace gave none');
  return Uint8Array.from(trace.fan, (share, hour) => (share > ON ? 1 + heat[hour] : 0));
}
