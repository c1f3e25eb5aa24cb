import { NOTEBOOKS } from '../../scripts/review/run-review.ts';
import type { Page } from '../../src/report/page.ts';
import { Units } from '../../src/report/units.ts';
import { loadedSample, reviewedSample, type Sample } from '../support/sample.ts';

/** The pages of a sample season without models. @param As  what says numbers with their units */
export async function samplePages(name: Sample, As: typeof Units = Units): Promise<Page[]> {
  const loaded = await loadedSample(name);
  const review = await reviewedSample(name);
  const { season } = loaded;
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
