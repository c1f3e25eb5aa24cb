import type { BinRun } from './bin-run.ts';
import { fromLocal } from './calendar.ts';
import { farmEnergy } from './farm-energy.ts';
import type { FarmPlan } from './farm-types.ts';
import { type FanRow, fanRows } from './machine-log.ts';
import { PROBE_DAYS } from './paper.ts';
import { runBin } from './run-bin.ts';
import type { Weather } from './weather.ts';

/** Simulate all bins of a farm. */
export function runFarm(farm: FarmPlan, weather: Weather): BinRun[] {
  return farm.bins.map((plan) =>
    runBin(
      plan,
      farm.fans,
      weather,
      farm.seed,
      fromLocal(farm.logsEnd),
      (farm.history ? (PROBE_DAYS[plan.id] ?? []) : []).map(fromLocal),
    ),
  );
}

/** Rows of a fan's log by its id, at one logging interval. */
export const fanLogOf = (farm: FarmPlan, runs: readonly BinRun[], weather: Weather, everyMin: number) => {
  const energy = farmEnergy(farm, runs, weather);
  return (id: string): FanRow[] => {
    const fan = farm.fans.find((one) => one.id === id)!;
    const run = runs.find((one) => one.runs.has(id))!;
    return fanRows(
      fan,
      run.runs.get(id)!,
      energy.minutes.get(id)!,
      weather,
      farm.seed,
      run.startMs,
      fromLocal(farm.logsEnd),
      everyMin,
    );
  };
};
