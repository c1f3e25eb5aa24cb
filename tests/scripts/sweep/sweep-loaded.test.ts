import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rowsOfArrow } from '../../../scripts/sweep/rows-arrow.ts';
import { sweepLoaded } from '../../../scripts/sweep/sweep-loaded.ts';
import { sweepOptions } from '../../../scripts/sweep/sweep-options.ts';
import type { FittedValues } from '../../../src/analysis/model/fitted-values.ts';
import type { BinModel } from '../../../src/analysis/model/model-types.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import { withoutRuns } from '../../../src/analysis/what-if/bin-what-if.ts';
import { withheld } from '../../../src/base/estimate.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { readSeason } from '../../../src/season/read-season.ts';

const SAMPLE = fileURLToPath(new URL('../../../data-samples/sorrel-fork', import.meta.url));
const OPTIONS = sweepOptions({
  ...{ bins: 'B5', years: 'season,2016', strategies: 'always-on,temperature-difference,as-logged', workers: '1' },
});

// A bed as a fit would leave it, so that nothing waits for one; what is left out is as the season states it.
const MODEL: BinModel = {
  fitted: { flowM3S: 1.3 } satisfies Partial<FittedValues> as FittedValues,
  cables: [],
  flowM3S: withheld('not asked'),
  moistureBiasPoints: withheld('not asked'),
  endMoistureWb: withheld('not asked'),
  mayBes: [],
  isotherms: [],
  trained: null,
  unseen: null,
  trusted: true,
  why: 'Stated by a test.',
  wouldHelp: [],
  notes: [],
};

// B5 of the sample: beans to be cooled, one cable; sold on 11 March.
describe('a sweep of a season that is reviewed', { timeout: 480_000 }, () => {
  const dir = mkdtempSync(join(tmpdir(), 'sweep-loaded-'));
  let loaded: LoadedSeason;
  let plain: SeasonReview;
  beforeAll(async () => {
    loaded = await loadSeason(await readSeason(SAMPLE));
    plain = reviewSeason(loaded);
  }, 480_000);
  afterAll(() => rmSync(dir, { recursive: true, force: true }));

  async function swept(out: string, of: BinModel) {
    const review = { ...plain, whatIf: [withoutRuns('B5', of, 'Left out.')] };
    const said: string[] = [];
    await sweepLoaded({ loaded, review }, join(dir, out), OPTIONS, (line) => said.push(line));
    const [rows, told] = ['strategies.arrow', 'sweep.json'].map((name) => readFileSync(join(dir, out, name)));
    return { said: said.join('\n'), rows, told };
  }

  it('runs the bins by the review’s fits', async () => {
    const taken = await swept('taken', MODEL);
    expect(taken.said).toContain('Shop 27: trusted. Stated by a test.');
    expect(rowsOfArrow(taken.rows).filter(({ fanHours }) => Number(fanHours) > 0).length).toBe(5);
    // Filled on 3 October, sold on 11 March.
    expect(JSON.parse(String(taken.told)).plan.by).toEqual(['10-31', '11-30', '12-31', '01-31', '02-28']);
  });

  it('fits nothing that the review has fitted', async () => {
    const { said } = await swept('planted', { ...MODEL, trusted: false, why: 'Planted.' });
    expect(said).toContain('Shop 27: not trusted. Planted.');
  });
});
