import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { DAY } from '../../sample/calendar.ts';
import { inventWeather } from '../../sample/weather.ts';
import { drawSeason } from '../coverage/draw-season.ts';
import { type Logs, logSeason } from '../coverage/log-season.ts';
import { openByTables } from '../coverage/open-season.ts';
import type { SeasonDraw } from '../coverage/plan.ts';
import { type BinTrace, runBin } from '../coverage/run-bin.ts';

export interface DrawnSeason {
  draw: SeasonDraw;
  traces: BinTrace[];
  loaded: LoadedSeason;
  review: SeasonReview;
}

/**
 * A season drawn from a seed, played by a finer bed than the kit's, and reviewed.
 *
 * @param spoil  makes the season's statement and logs wrong on purpose, after it was played
 */
export async function drawnSeason(
  seed: number,
  workFolder: string,
  spoil: (draw: SeasonDraw, logs: Logs) => void = () => {},
): Promise<DrawnSeason> {
  const draw = drawSeason(seed);
  const weather = inventWeather(seed, draw.startMs - 5 * DAY, draw.endMs + 6 * DAY);
  const traces = draw.bins.map((bin) => runBin(bin, weather));
  const logs = logSeason(draw, traces, weather);
  spoil(draw, logs);
  const folder = join(workFolder, `season-${seed}`);
  const loaded = await openByTables(draw, logs, folder);
  rmSync(folder, { recursive: true, force: true });
  return { draw, traces, loaded, review: reviewSeason(loaded) };
}
