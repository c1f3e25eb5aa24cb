import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { DAY } from '../../sample/calendar.ts';
import { inventWeather } from '../../sample/weather.ts';
import { type Case, casesOf } from './cases.ts';
import { drawSeason } from './draw-season.ts';
import { type FrontCase, frontCases } from './front-cases.ts';
import { logSeason } from './log-season.ts';
import { openByFiles, openByTables } from './open-season.ts';
import { runBin } from './run-bin.ts';
import { binTruth } from './season-truth.ts';

export interface Played {
  cases: Case[];
  fronts: FrontCase[];
  /** bins whose analysis broke, with the reason */
  broken: string[];
}

/**
 * One drawn season from grain to numbers.
 *
 * @param workFolder  a folder that may be written to
 * @param byFiles     through CSV files and the kit's readers; else the logs go straight into its tables
 */
export async function playSeason(seed: number, workFolder: string, byFiles: boolean): Promise<Played> {
  const draw = drawSeason(seed);
  const weather = inventWeather(seed, draw.startMs - 5 * DAY, draw.endMs + 6 * DAY);
  const traces = draw.bins.map((bin) => runBin(bin, weather));
  const logs = logSeason(draw, traces, weather);
  const folder = join(workFolder, `season-${seed}`);
  const loaded = await (byFiles ? openByFiles : openByTables)(draw, logs, folder);
  rmSync(folder, { recursive: true, force: true });
  const review = reviewSeason(loaded);
  const out: Played = { cases: [], fronts: [], broken: [] };
  review.bins.forEach((bin, i) => {
    if (bin.failure !== null) {
      out.broken.push(`season ${seed}, ${bin.bin.id}: ${bin.failure}`);
      return;
    }
    out.cases.push(...casesOf(seed, traces[i], binTruth(draw, traces[i]), bin));
    out.fronts.push(...frontCases(seed, traces[i], logs, bin.fronts));
  });
  return out;
}
