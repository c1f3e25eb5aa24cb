import { airFiles } from './air-files.ts';
import type { BinRun } from './bin-run.ts';
import { binTruth } from './bin-truth.ts';
import { fanFiles } from './fan-files.ts';
import { tariffTruth } from './fan-truth.ts';
import { farmEnergy, seasonMonths } from './farm-energy.ts';
import type { FarmPlan } from './farm-types.ts';
import type { PlantedFault } from './faults.ts';
import { FILE_LINES_2024 } from './file-lines.ts';
import { grainFiles } from './grain-files.ts';
import type { SampleFile } from './log-text.ts';
import { billsCsv, probesCsv, ticketsCsv } from './paper.ts';
import { seasonLog } from './season-log.ts';
import type { Weather } from './weather.ts';

/** The season with all planted faults. */
export function make2024(
  farm: FarmPlan,
  weather: Weather,
  runs: readonly BinRun[],
): { files: SampleFile[]; truth: unknown; faults: PlantedFault[]; fileLines: readonly string[] } {
  const log = seasonLog(farm, weather, runs);
  grainFiles(log);
  fanFiles(log);
  airFiles(log);
  const energy = farmEnergy(farm, runs, weather);
  const months = seasonMonths(farm);
  log.files.push(
    { path: 'tickets.csv', text: ticketsCsv(runs, farm.seed) },
    { path: 'probes.csv', text: probesCsv(runs, farm.seed) },
    { path: 'bills.csv', text: billsCsv(farm, energy.loads, months, farm.seed) },
  );
  const known = (ms: number) => (Number.isNaN(ms) ? null : ms);
  const truth = {
    madeBy: 'scripts/make-sample.ts; the kit does not read this file',
    seed: farm.seed,
    season: farm.title,
    bins: runs.map((one) => binTruth(farm, one, energy, months)),
    tariffs: tariffTruth(farm, energy, months),
    faults: log.faults.map((one) => ({ ...one, fromMs: known(one.fromMs), toMs: known(one.toMs) })),
  };
  return { files: log.files, truth, faults: log.faults, fileLines: FILE_LINES_2024 };
}
