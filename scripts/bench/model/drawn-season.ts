import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { DAY } from '../../sample/calendar.ts';
import { inventWeather, type Weather } from '../../sample/weather.ts';
import { drawSeason } from '../coverage/draw-season.ts';
import { logSeason } from '../coverage/log-season.ts';
import { openByTables } from '../coverage/open-season.ts';
import type { SeasonDraw } from '../coverage/plan.ts';
import { type BinTrace, runBin } from '../coverage/run-bin.ts';
import { drawPapers } from './draw-papers.ts';
import type { Badness } from './made-bad.ts';

export interface DrawnSeason {
  draw: SeasonDraw;
  /** in which it was played */
  weather: Weather;
  traces: BinTrace[];
  loaded: LoadedSeason;
  review: SeasonReview;
}

/**
 * A season drawn from a seed, played by a finer bed than the kit's, and reviewed.
 *
 * @param bad  makes it wrong on purpose
 */
export async function drawnSeason(seed: number, workFolder: string, bad: Badness | null = null): Promise<DrawnSeason> {
  const draw = drawSeason(seed);
  bad?.before?.(draw);
  const weather = inventWeather(seed, draw.startMs - 5 * DAY, draw.endMs + 6 * DAY);
  const traces = draw.bins.map((bin) => runBin(bin, weather));
  const logs = { ...logSeason(draw, traces, weather), tickets: drawPapers(draw, traces) };
  const stated = { ...draw, bins: draw.bins.map((bin) => ({ ...bin })) };
  bad?.after?.(stated, logs);
  const folder = join(workFolder, `season-${seed}`);
  const loaded = await openByTables(stated, logs, folder);
  rmSync(folder, { recursive: true, force: true });
  return { draw, weather, traces, loaded, review: reviewSeason(loaded) };
}
