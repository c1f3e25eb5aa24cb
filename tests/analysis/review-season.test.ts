import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { tariffMonths } from '../../src/analysis/energy/tariff-months.ts';
import { fanSeason } from '../../src/analysis/fan/fan-season.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

vi.mock('../../src/analysis/fan/fan-season.ts', { spy: true });
vi.mock('../../src/analysis/energy/tariff-months.ts', { spy: true });

const folder = mkdtempSync(join(tmpdir(), 'fanbook-broken-'));
let loaded: LoadedSeason;
beforeAll(async () => {
  makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 2, cables: 1, sensors: 2, hours: 24 * 10 });
  loaded = await loadSeason(await readSeason(folder));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('what breaks', () => {
  it('nothing, on a whole season', () => {
    const { bins, failures } = reviewSeason(loaded);
    expect(bins.map((one) => one.failure)).toEqual([null, null]);
    expect(failures).toEqual([]);
  });
  it('in a fan takes the bins of that fan and no others', () => {
    vi.mocked(fanSeason).mockImplementationOnce(() => {
      throw new Error('planted');
    });
    const { bins, fans, failures } = reviewSeason(loaded);
    expect(bins.map((one) => one.failure)).toEqual(['fan F1: planted', null]);
    expect(bins[1].fan.hours.value).toBeGreaterThan(0);
    expect(fans.map((one) => one.fanId)).toEqual(['F2']);
    expect(failures).toEqual(['fan F1: planted']);
  });
  it('a fan without a log leaves its bin’s hours untold, also what each of them could do', () => {
    const season = {
      ...loaded.season,
      bins: loaded.season.bins.map((bin, i) => (i === 0 ? bin : { ...bin, fanIds: [...bin.fanIds, 'F3'] })),
      fans: [...loaded.season.fans, { ...loaded.season.fans[1], id: 'F3' }],
    };
    const [first, second] = reviewSeason({ ...loaded, season }).bins;
    expect(first.useful).not.toBeNull();
    expect(second.fan.hours.why).toContain('No log tells what fan F3 did');
    expect(second.useful).toBeNull();
    // Water by the air is a sum over the hours of all of the bin's fans; airflow is told of the logged one, with what that may hide.
    expect(second.water.byAir).toMatchObject({
      value: null,
      why: expect.stringMatching(/^No log tells what fan F3 did/),
    });
    expect(second.airflow.notes.join(' ')).toContain('No log tells what fan F3 did');
    expect(first.airflow.notes.join(' ')).not.toContain('No log tells');
  });
  it('in the months of the tariffs takes no bin', () => {
    vi.mocked(tariffMonths).mockImplementationOnce(() => {
      throw new Error('planted');
    });
    const { bins, failures } = reviewSeason(loaded);
    expect(bins.map((one) => one.failure)).toEqual([null, null]);
    expect(failures).toEqual(['tariff months: planted']);
  });
});
