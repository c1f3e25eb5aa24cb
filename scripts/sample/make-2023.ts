import type { BinRun } from './bin-run.ts';
import { binTruth } from './bin-truth.ts';
import { cableReadings } from './cable-log.ts';
import { fromLocal, localText } from './calendar.ts';
import { tariffTruth } from './fan-truth.ts';
import { farmEnergy, seasonMonths } from './farm-energy.ts';
import type { FarmPlan } from './farm-types.ts';
import { FILE_LINES_2023 } from './file-lines.ts';
import { byTime, longCsv, num, plenumCsv, type SampleFile, stationCsv, text } from './log-text.ts';
import { plenumRows, stationRows } from './machine-log.ts';
import { billsCsv, ticketsCsv } from './paper.ts';
import { fanLogOf } from './run-farm.ts';
import type { Weather } from './weather.ts';

/** A smaller season before, without planted faults. */
export function make2023(
  farm: FarmPlan,
  weather: Weather,
  runs: readonly BinRun[],
): { files: SampleFile[]; truth: unknown; fileLines: readonly string[] } {
  const logsEnd = fromLocal(farm.logsEnd);
  const cables = byTime(runs.flatMap((run) => cableReadings(run, farm.seed, logsEnd)));
  const fanLog = fanLogOf(farm, runs, weather, 15);
  const fans = byTime(farm.fans.flatMap((fan) => fanLog(fan.id)));
  const plenum = byTime(runs.flatMap((run) => plenumRows(run, farm.seed, logsEnd)));
  const station = stationRows(weather, farm.seed, fromLocal(farm.starts), logsEnd);
  const energy = farmEnergy(farm, runs, weather);
  const months = seasonMonths(farm);
  return {
    files: [
      { path: 'logs/cables.csv.gz', text: text(longCsv(cables, localText)) },
      {
        path: 'logs/fans.csv.gz',
        text: text([
          'time,fan,amps,kwh',
          ...fans.map((row) => `${localText(row.ms)},${row.fan},${num(row.amps, 1)},${num(row.kwh, 1)}`),
        ]),
      },
      { path: 'logs/plenum.csv.gz', text: text(plenumCsv(plenum, localText)) },
      {
        path: 'weather/station.csv',
        text: text(stationCsv(station)),
      },
      { path: 'tickets.csv', text: ticketsCsv(runs, farm.seed) },
      { path: 'bills.csv', text: billsCsv(farm, energy.loads, months, farm.seed) },
    ],
    truth: {
      madeBy: 'scripts/make-sample.ts; the kit does not read this file',
      seed: farm.seed,
      season: farm.title,
      bins: runs.map((run) => binTruth(farm, run, energy, months)),
      tariffs: tariffTruth(farm, energy, months),
      faults: [],
    },
    fileLines: FILE_LINES_2023,
  };
}
