import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { strategyOf } from '../../simulation/strategies/strategies.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';
import { heldBack, type YearsHeldBack } from './held-back.ts';
import type { YearSpec } from './weather-years.ts';

/** A bin's years under one strategy. */
export interface StrategyHeldBack {
  /** as `summary.json` names it, and as pages do */
  id: string;
  title: string;
  years: YearsHeldBack;
}

/**
 * Run strategies through a bin's years and tell what held each year back.
 *
 * @param years       from `yearSpec`; those without weather are told with why
 * @param strategies  ids; one with a heater is told as not told
 */
export function yearsHeldBack(years: readonly YearSpec[], strategies: readonly string[]): StrategyHeldBack[] {
  return strategies.map((id) => {
    const { title, heater } = strategyOf(id);
    const lacking = years.flatMap(({ year, why }) => (why === null ? [] : [{ weather: String(year), why }]));
    const able = years.flatMap(({ year, spec }) => (spec === null ? [] : [{ year, spec }]));
    if (heater !== undefined) {
      const heated = able.map(({ year }) => ({
        weather: String(year),
        why: 'What its heater adds is not the weather’s.',
      }));
      return { id, title, years: { best: null, others: [], untold: [...heated, ...lacking] } };
    }
    const told = heldBack(able.map(({ year, spec }) => ({ weather: String(year), spec, ...tracedRun(spec, id) })));
    return { id, title, years: { ...told, untold: [...told.untold, ...lacking] } };
  });
}

function tracedRun(spec: RunSpec, id: string) {
  const { outcome, trace } = runSeason(spec, untilReached(strategyOf(id), spec.goal), {}, { trace: true });
  if (trace === null) throw new Error('a run that was asked for its trace gave none');
  return { outcome, trace };
}
