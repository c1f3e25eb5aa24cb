import type { BinRun } from './bin-run.ts';
import { DAY, fromLocal } from './calendar.ts';
import type { FarmPlan } from './farm-types.ts';
import type { PlantedFault } from './faults.ts';
import type { SampleFile } from './log-text.ts';
import type { Weather } from './weather.ts';

/** What the makers of log files share: the farm as it ran, and the list that their faults go to. */
export interface SeasonLog {
  farm: FarmPlan;
  weather: Weather;
  runs: readonly BinRun[];
  run(id: string): BinRun;
  /** first moment after the season, and after the logs */
  endMs: number;
  logsEnd: number;
  faults: PlantedFault[];
  files: SampleFile[];
}

export function seasonLog(farm: FarmPlan, weather: Weather, runs: readonly BinRun[]): SeasonLog {
  return {
    farm,
    weather,
    runs,
    run: (id) => runs.find((one) => one.plan.id === id)!,
    endMs: fromLocal(farm.ends) + DAY,
    logsEnd: fromLocal(farm.logsEnd),
    faults: [],
    files: [],
  };
}

/** Tell how many cells of a file lie outside the season's bounds. */
export function tellOutside<T extends { ms: number }>(
  log: SeasonLog,
  where: string,
  rows: readonly T[],
  cells: (row: T) => number,
): void {
  const out = rows.filter((row) => row.ms >= log.endMs || row.ms < fromLocal(log.farm.starts));
  log.faults.push({
    kind: 'outside',
    where,
    bin: null,
    quantity: null,
    fromMs: log.endMs,
    toMs: log.logsEnd,
    count: out.reduce((sum, row) => sum + cells(row), 0),
    expect:
      'readings outside starts … ends are counted and left out (count: cells with a reading, times and ids not counted)',
  });
}
