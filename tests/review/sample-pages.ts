import { resolve } from 'node:path';
import { NOTEBOOKS } from '../../scripts/review/run-review.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import type { Page } from '../../src/report/page.ts';
import { Units } from '../../src/report/units.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';

/** The pages of a sample season without models. @param As  what says numbers with their units */
export async function samplePages(name: string, As: typeof Units = Units): Promise<Page[]> {
  const season = await readSeason(resolve('data-samples', name));
  const loaded = await loadSeason(season);
  const review = reviewSeason(loaded);
  const units = new As(season.showUnits, season.currency, season.site.timeZone);
  const made = {
    seasonTitle: season.title,
    farm: null,
    command: 'a test',
    version: '0',
    generatedAtMs: 0,
    inputs: [],
    changedDefaults: [],
  };
  return NOTEBOOKS.map((notebook) => notebook.page({ loaded, review, units, made }));
}
