import { type Yardstick, yardstickOf } from './regret.ts';
import { AS_LOGGED } from './run-strategy.ts';
import { isAsItIs, type SensitivityStep, sensitivity } from './sensitivity.ts';
import { type StrategyYears, strategyYears } from './strategy-years.ts';
import type { SweepRow } from './sweep-columns.ts';
import type { SweepPlan } from './sweep-plan.ts';
import { AIRFLOW_LAW } from './variant.ts';

/** A bin in a year that could not be run; `all` where it was none. */
export interface LeftOut {
  bin: string;
  weather: string;
  why: string;
}

/** What a sweep's rows say together. */
export interface SweepSummary {
  plan: SweepPlan;
  rows: number;
  leftOut: LeftOut[];
  /** what `regret` is told against */
  regretAgainst: Yardstick;
  strategies: StrategyYears[];
  sensitivity: SensitivityStep[];
  /** null where airflow was not moved */
  airflowLaw: string | null;
}

export function sweepSummary(plan: SweepPlan, rows: readonly SweepRow[]): SweepSummary {
  const regretAgainst = yardstickOf(plan.strategies);
  const byBin = new Map<string, SweepRow[]>(plan.bins.map(({ id }) => [id, []]));
  for (const row of rows) byBin.get(String(row.bin))!.push(row);
  const strategies: StrategyYears[] = [];
  const steps: SensitivityStep[] = [];
  const leftOut: LeftOut[] = [];
  for (const bin of plan.bins) {
    const all = byBin.get(bin.id)!;
    const usual = all.filter(isAsItIs);
    leftOut.push(...leftOutOf(bin.weathers, usual));
    if (bin.weathers.length === 0) continue;
    for (const id of plan.strategies) {
      const own = usual.filter((row) => row.strategy === id);
      strategies.push(strategyYears(own, usual, bin.startOn ?? '', plan.by, regretAgainst));
      const moved = all.filter((row) => row.strategy === id);
      steps.push(...sensitivity(moved, bin.startOn ?? ''));
    }
  }
  const airflow = steps.some(({ varied }) => varied === 'airflow');
  return {
    plan,
    rows: rows.length,
    leftOut,
    regretAgainst,
    strategies,
    sensitivity: steps,
    airflowLaw: airflow ? AIRFLOW_LAW : null,
  };
}

/** Years in which no strategy could be run: the reason that all share; one line where that is so of all years. */
function leftOutOf(weathers: readonly string[], usual: readonly SweepRow[]): LeftOut[] {
  const out = weathers.flatMap((weather) => {
    const rows = usual.filter((row) => row.weather === weather && row.strategy !== AS_LOGGED);
    const [first] = rows;
    if (first === undefined || rows.some((row) => row.fanHours !== null || row.why !== first.why)) return [];
    return [{ bin: String(first.bin), weather, why: String(first.why) }];
  });
  const [first] = out;
  const alike = out.length === weathers.length && out.every(({ why }) => why === first.why);
  return alike && out.length > 1 ? [{ ...first, weather: 'all' }] : out;
}
