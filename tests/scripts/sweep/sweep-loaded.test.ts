import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rowsOfArrow } from '../../../scripts/sweep/rows-arrow.ts';
import { sweepLoaded } from '../../../scripts/sweep/sweep-loaded.ts';
import { sweepOptions } from '../../../scripts/sweep/sweep-options.ts';
import { binModel } from '../../../src/analysis/model/bin-model.ts';
import type { BinModel } from '../../../src/analysis/model/model-types.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import { withoutRuns } from '../../../src/analysis/what-if/bin-what-if.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { readSeason } from '../../../src/season/read-season.ts';

const SAMPLE = fileURLToPath(new URL('../../../data-samples/sorrel-fork', import.meta.url));
const OPTIONS = sweepOptions({
  ...{ bins: 'B5', years: 'season,2016', strategies: 'always-on,temperature-difference,as-logged', workers: '1' },
});

// B5 of the sample: beans to be cooled, one cable, fitted soonest; sold on 11 March.
describe('a sweep of a season that is reviewed', { timeout: 480_000 }, () => {
  const dir = mkdtempSync(join(tmpdir(), 'sweep-loaded-'));
  let loaded: LoadedSeason;
  let plain: SeasonReview;
  let model: BinModel;
  beforeAll(async () => {
    loaded = await loadSeason(await readSeason(SAMPLE));
    plain = reviewSeason(loaded);
    model = binModel(loaded, plain.bins.find(({ bin }) => bin.id === 'B5')!);
  }, 480_000);
  afterAll(() => rmSync(dir, { recursive: true, force: true }));

  async function swept(out: string, of: BinModel | null) {
    const review = of === null ? null : { ...plain, whatIf: [withoutRuns('B5', of, 'Left out.')] };
    const said: string[] = [];
    await sweepLoaded({ loaded, review }, join(dir, out), OPTIONS, (line) => said.push(line));
    const [rows, told] = ['strategies.arrow', 'sweep.json'].map((name) => readFileSync(join(dir, out, name)));
    return { said: said.join('\n'), rows, told };
  }

  it('by the review’s fits has the bytes of one that fits anew', async () => {
    const [anew, taken] = [await swept('anew', null), await swept('taken', model)];
    expect(anew.said).toContain('Shop 27: trusted');
    expect(taken.rows.equals(anew.rows)).toBe(true);
    expect(taken.told.equals(anew.told)).toBe(true);
    expect(rowsOfArrow(taken.rows).filter(({ fanHours }) => Number(fanHours) > 0).length).toBe(5);
    // Filled on 3 October, sold on 11 March.
    expect(JSON.parse(String(taken.told)).plan.by).toEqual(['10-31', '11-30', '12-31', '01-31', '02-28']);
  });

  it('fits nothing that the review has fitted', async () => {
    const { said } = await swept('planted', { ...model, trusted: false, why: 'Planted.' });
    expect(said).toContain('Shop 27: not trusted. Planted.');
  });
});
