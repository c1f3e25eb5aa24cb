import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSweep } from '../../../scripts/sweep/read-sweep.ts';
import { rowsOfArrow } from '../../../scripts/sweep/rows-arrow.ts';
import { runSweep } from '../../../scripts/sweep/run-sweep.ts';
import { sweepLoaded } from '../../../scripts/sweep/sweep-loaded.ts';
import { sweepOptions } from '../../../scripts/sweep/sweep-options.ts';
import { binModel } from '../../../src/analysis/model/bin-model.ts';
import { runSpecOf } from '../../../src/analysis/model/run-spec-of.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { seasonHeldBack } from '../../../src/analysis/strategies/held-back-season.ts';
import type { SweepRow } from '../../../src/analysis/strategies/sweep-columns.ts';
import type { Swept } from '../../../src/analysis/strategies/swept.ts';
import { withoutRuns } from '../../../src/analysis/what-if/bin-what-if.ts';
import { strategySweptSection } from '../../../src/notebook/strategy-swept.ts';
import { strategyYearsSection } from '../../../src/notebook/strategy-years.ts';
import { Units } from '../../../src/report/units.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { ohareSeason } from '../../analysis/strategies/ohare-season.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const UNITS = new Units('us', 'USD', 'America/Chicago');
const STRATEGIES = 'humidity-limit,always-on,best-in-hindsight';
/** The season’s own year and two others. */
const RUNS = 3 * 3;
let dir: string;
let folder: string;
/** as the review reads it */
let swept: Swept | undefined;

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'ohare-'));
  folder = join(dir, 'season');
  // Corn at 17.5 % with scale tickets, the fan on from the start; of the first drawn bins that are corn to dry with air for it.
  await ohareSeason(folder, 4040);
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const finished = () => join(folder, 'sweep', 'finished.jsonl');
const kept = () => (existsSync(finished()) ? readFileSync(finished(), 'utf8').split('\n').slice(1, -1) : []);
const sweepOf = () => runSweep(folder, null, sweepOptions({ strategies: STRATEGIES, workers: '1' }), () => {});

// Logs from another bed in the archive's weather; what is known of these autumns from outside stands in ohare.test.ts.
describe('a season folder at O’Hare, swept over its three autumns', { timeout: 900_000 }, () => {
  it('stopped by SIGINT ends with 130, keeps what is done, and goes on from there', async () => {
    const args = ['--import', 'tsx', 'scripts/sweep.ts', folder, '--strategies', STRATEGIES, '--workers', '1'];
    const child = spawn(process.execPath, args, { cwd: ROOT });
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
    });
    const ended = new Promise<number | null>((resolve) => {
      child.once('exit', resolve);
    });
    while (kept().length < 3 && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 5));
    child.kill('SIGINT');
    expect(await ended).toBe(130);
    expect(said).toContain('Model    Bin B1: trusted');
    expect(said).toContain('Stopped. What is done is kept; the same command goes on from there.');
    const before = kept();
    expect(before.length).toBeGreaterThanOrEqual(3);
    expect(before.length).toBeLessThan(RUNS);
    expect(existsSync(join(folder, 'sweep', 'strategies.arrow'))).toBe(false);
    await sweepOf();
    swept = readSweep(await readSeason(folder));
    const after = kept();
    expect(after).toHaveLength(RUNS);
    expect(before.filter((line) => !after.includes(line))).toEqual([]);
  });

  it('the humidity rule is done first in the dry 2017', () => {
    const rows: SweepRow[] = rowsOfArrow(readFileSync(join(folder, 'sweep', 'strategies.arrow')));
    const rule = rows.filter((row) => row.strategy === 'humidity-limit');
    expect(rule.map(({ weather }) => weather)).toEqual(['season', '2016', '2018']);
    const [dry, damp, cold] = rule.map(({ reachedOn }) => String(reachedOn).slice(5));
    expect([dry < damp, dry < cold]).toEqual([true, true]);
    for (const row of rows) {
      const best = rows.find((one) => one.strategy === 'best-in-hindsight' && one.weather === row.weather);
      if (row.reachedTarget) expect(Number(best?.cost)).toBeLessThanOrEqual(Number(row.cost));
    }
  });

  it('the page says what held the damp 2016 and the cold 2018 back, and what each rule cost over the years', async () => {
    const loaded = await loadSeason(await readSeason(folder));
    const season = reviewSeason(loaded);
    const [review] = season.bins;
    const model = binModel(loaded, review);
    const { fitted } = model;
    const { spec } = runSpecOf(loaded, review, fitted!);
    const years = { name: 'Bin B1', ...seasonHeldBack(loaded, spec!, ['humidity-limit']) };
    const { entries } = strategyYearsSection([years], UNITS);
    expect(entries?.[0].text).toMatch(/^Humidity limit was done first in 2017/);
    const [damp, cold] = ['2016', '2018'].map((year) => entries?.[0].details?.find((text) => text.startsWith(year)));
    expect(damp).toMatch(/^2016 took \d+ days, \d+ more than 2017: the fan could run only .* hours a day in place of/);
    expect(cold).toMatch(
      /^2018 took \d+ days, \d+ more than 2017: the fan’s air at .* in place of .* carries .* less water/,
    );
    const costs = strategySweptSection(swept, [review], UNITS);
    expect(costs.lead).toContain('1 bin in the weather of 3 years');
    expect(costs.tables?.[0].rows.map(({ way }) => way)).toEqual(['Humidity limit', 'Always on', 'Best in hindsight']);
    // By the fits that a review has made a sweep has the rows of one that fitted anew.
    const whatIf = [withoutRuns('B1', model, 'Not run here.')];
    const again = join(dir, 'again');
    const few = sweepOptions({ strategies: 'humidity-limit,always-on', workers: '1' });
    await sweepLoaded({ loaded, review: { ...season, whatIf } }, again, few, () => {});
    const rows = (at: string) => rowsOfArrow(readFileSync(join(at, 'strategies.arrow')));
    const anew = rows(join(folder, 'sweep')).filter(({ strategy }) => strategy !== 'best-in-hindsight');
    expect(rows(again)).toEqual(anew);
    expect(anew).toHaveLength(6);
  });
});
