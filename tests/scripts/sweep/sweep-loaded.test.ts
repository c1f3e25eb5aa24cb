import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rowsOfArrow } from '../../../scripts/sweep/rows-arrow.ts';
import { sweepLoaded } from '../../../scripts/sweep/sweep-loaded.ts';
import { sweepOptions } from '../../../scripts/sweep/sweep-options.ts';
import type { BinModel } from '../../../src/analysis/model/model-types.ts';
import { runSpecOf } from '../../../src/analysis/model/run-spec-of.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { AS_LOGGED, runStrategy } from '../../../src/analysis/strategies/run-strategy.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import { withoutRuns } from '../../../src/analysis/what-if/bin-what-if.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';
import { statedModel } from '../../support/stated-model.ts';

const FITTED = { flowM3S: 5, isotherm: 'modified Henderson D245.5' };
const RULES = ['always-on', 'humidity-limit', AS_LOGGED];

// The made log is no bin's, and no fit to it would be trusted: what runs, runs by the fit that stands in the review.
describe('a sweep of a season that is reviewed', () => {
  const dir = mkdtempSync(join(tmpdir(), 'sweep-loaded-'));
  let loaded: LoadedSeason;
  let plain: SeasonReview;
  beforeAll(async () => {
    makeSeasonFolder(join(dir, 'season'), { ...SMALL_SEASON, hours: 24 * 34 });
    loaded = await loadSeason(await readSeason(join(dir, 'season')));
    plain = reviewSeason(loaded);
  });
  afterAll(() => rmSync(dir, { recursive: true, force: true }));

  async function swept(out: string, of: BinModel) {
    const review = { ...plain, whatIf: [withoutRuns('B1', of, 'Left out.')] };
    const said: string[] = [];
    const options = sweepOptions({ years: 'season', strategies: RULES.join(','), workers: '1' });
    await sweepLoaded({ loaded, review }, join(dir, out), options, (line) => said.push(line));
    const [rows, told] = ['strategies.arrow', 'sweep.json'].map((name) => readFileSync(join(dir, out, name)));
    return { said: said.join('\n'), rows: rowsOfArrow(rows), told: JSON.parse(String(told)) };
  }

  it('runs each rule by the review’s fit, as a run of that bed alone does', async () => {
    const { said, rows, told } = await swept('taken', statedModel(FITTED));
    expect(said).toContain('Bin 1: trusted. Stated by a test.');
    const found = runSpecOf(loaded, plain.bins[0], FITTED);
    if (found.spec === null) throw new Error(found.why);
    const { spec, logged } = found;
    expect(rows.map(({ strategy }) => strategy)).toEqual(RULES);
    for (const { strategy, fanHours, endMoisturePct } of rows) {
      const { outcome } = runStrategy(spec, String(strategy), { logged });
      expect(fanHours).toBe(outcome?.fanHours);
      expect(endMoisturePct).toBe(100 * Number(outcome?.endMoistureWb));
    }
    // Filled on 4 October, 34 days of log.
    expect(told.plan.by).toEqual(['10-31']);
  });

  it('fits nothing that the review has fitted', async () => {
    const { said } = await swept('planted', statedModel(FITTED, { trusted: false, why: 'Planted.' }));
    expect(said).toContain('Bin 1: not trusted. Planted.');
  });
});
