import { appendFileSync, copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { drawSeason } from '../../../scripts/bench/coverage/draw-season.ts';
import { logSeason } from '../../../scripts/bench/coverage/log-season.ts';
import { writeFolder } from '../../../scripts/bench/coverage/open-season.ts';
import { runBin } from '../../../scripts/bench/coverage/run-bin.ts';
import { type BinTruth, binTruth } from '../../../scripts/bench/coverage/season-truth.ts';
import { drawPapers } from '../../../scripts/bench/model/draw-papers.ts';
import { DAY } from '../../../scripts/sample/calendar.ts';
import type { Weather } from '../../../scripts/sample/weather.ts';
import { hourlyAir } from '../../../src/analysis/strategies/hourly-air.ts';
import { localDayStart } from '../../../src/base/zone.ts';
import { CHICAGO, OHARE, ohareAir, ohareFile, PRESSURE_PA, YEARS } from './ohare-bin.ts';

const HOUR_MS = 3_600_000;
/** Local calendar year whose autumn the folder's own season is. */
const OWN_YEAR = 2017;
const DAYS = 80;

/**
 * A season folder with a bin of corn dried at O'Hare in the autumn of 2017: its logs come from another bed than the kit's, with
 * that bed's own physics, uneven air, scale tickets and sensors that err, driven by the archive's weather; the archive's three years are its past weather.
 *
 * @param seed  of the drawn bin
 * @returns     what truly happened in it
 */
export async function ohareSeason(folder: string, seed: number): Promise<BinTruth> {
  const drawn = drawSeason(seed);
  const [bin] = drawn.bins;
  const filledMs = localDayStart(CHICAGO, OWN_YEAR, 10, 1) + 16 * HOUR_MS;
  const moved = {
    ...bin,
    filledMs,
    fanFromMs: filledMs + (bin.fanFromMs - bin.filledMs),
    endMs: filledMs + DAYS * DAY,
    running: 'continuous' as const,
  };
  const draw = { ...drawn, bins: [moved], startMs: filledMs - 2 * DAY, endMs: moved.endMs };
  const weather = await ohareWeather(draw.startMs - 3 * DAY, draw.endMs + 5 * DAY);
  const traces = [runBin(moved, weather)];
  const logs = { ...logSeason(draw, traces, weather), tickets: drawPapers(draw, traces) };
  mkdirSync(folder, { recursive: true });
  writeFolder(draw, logs, folder, true);
  mkdirSync(join(folder, 'history'));
  for (const year of YEARS) copyFileSync(join(OHARE, ohareFile(year)), join(folder, 'history', ohareFile(year)));
  appendFileSync(
    join(folder, 'season.yaml'),
    '  - { path: history/*.gz, holds: weather, role: history, format: isd-lite }\n',
  );
  return binTruth(draw, traces[0]);
}

/** The archive's hours for the other bed: no sun is told there, so none shines. */
async function ohareWeather(startMs: number, endMs: number): Promise<Weather> {
  const hours = Math.round((endMs - startMs) / HOUR_MS);
  const { tempC, rh, lacking } = hourlyAir(await ohareAir(), startMs, hours, PRESSURE_PA);
  if (lacking > 0) throw new Error(`${lacking} hours of the archive are lacking`);
  const flat = (value: number) => new Float64Array(hours).fill(value);
  // Magnus' line over water is near enough for a dew point that nobody reads.
  const dewPointC = tempC.map((t, i) => {
    const g = Math.log(rh[i]) + (17.62 * t) / (243.12 + t);
    return (243.12 * g) / (17.62 - g);
  });
  return {
    startMs,
    tempC,
    rh,
    dewPointC,
    seaLevelPa: flat(101_600),
    pressurePa: flat(PRESSURE_PA),
    sunWm2: flat(0),
    windMs: flat(3),
  };
}
