import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from 'apache-arrow';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mergeShards } from '../../../scripts/sweep/merge-shards.ts';
import { rowsOfParquet, rowsParquet } from '../../../scripts/sweep/rows-parquet.ts';
import { writeSweep } from '../../../scripts/sweep/write-sweep.ts';
import { SWEEP_COLUMNS, type SweepRow } from '../../../src/analysis/strategies/sweep-columns.ts';
import { InputError } from '../../../src/base/errors.ts';
import { smallFarm, sweepInto } from './sweep-of.ts';

let dir: string;
const at = (name: string) => join(dir, name);
const farm = smallFarm();
const problemsOf = async (dirs: readonly string[], sha256 = ''): Promise<string[]> => {
  try {
    await mergeShards(dirs, sha256);
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ code, message }) => `${code}: ${message}`);
    throw error;
  }
  return [];
};
const copy = (from: string, to: string, name = 'shard-1-of-2') => {
  for (const end of ['json', 'parquet']) copyFileSync(join(at(from), `${name}.${end}`), join(at(to), `${name}.${end}`));
};

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'shards-'));
  for (const name of ['whole', 's1', 's2', 'copy', 'broken', 'other', 'merged', 'empty']) mkdirSync(at(name));
  await sweepInto(at('whole'), farm);
  await sweepInto(at('s1'), farm, { shard: { index: 1, of: 2 } });
  await sweepInto(at('s2'), farm, { shard: { index: 2, of: 2 } });
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe('shards', () => {
  it('merge into the bytes of the whole sweep, in whatever order they are named', async () => {
    for (const dirs of [
      ['s1', 's2'],
      ['s2', 's1'],
    ]) {
      const { plan, rows } = await mergeShards(dirs.map(at), '');
      writeSweep(at('merged'), plan, rows);
      for (const name of ['strategies.arrow', 'sweep.json']) {
        expect(readFileSync(join(at('merged'), name)).equals(readFileSync(join(at('whole'), name)))).toBe(true);
      }
    }
  });

  it('each hold their part, no job twice', async () => {
    const rows = await Promise.all(
      [1, 2].map((index) => rowsOfParquet(readFileSync(join(at(`s${index}`), `shard-${index}-of-2.parquet`)))),
    );
    expect(rows.map((own) => own.length)).toEqual([12, 12]);
    expect(new Set(rows.flat().map((row) => row.inputs)).size).toBe(24);
  });

  it('are refused with one list when they do not fit', async () => {
    expect(await problemsOf([at('s1')])).toEqual([
      'SHARD_MISSING: shard 2/2 is in none of the folders. Run it with --shard 2/2, or name its folder.',
    ]);
    copy('s1', 'copy');
    const doubled = await problemsOf(['s1', 's2', 'copy'].map(at));
    expect(doubled).toEqual([expect.stringMatching(/^SHARD_DOUBLED: shard 1\/2 is there 2 times/)]);
    // The same folder named twice is one.
    expect(await problemsOf(['s1', 's2', 's1'].map(at))).toEqual([]);
    const lists = await problemsOf([at('s2'), at('empty'), at('nowhere')], 'changed');
    expect(lists.map((one) => one.split(':')[0])).toEqual([
      'SHARD_MANIFEST',
      'SHARD_MANIFEST',
      'SHARD_INPUTS',
      'SHARD_MISSING',
    ]);
  });

  it('are refused when rows are not those of the manifest', async () => {
    copy('s1', 'broken');
    const path = join(at('broken'), 'shard-1-of-2.parquet');
    const bytes = readFileSync(path);
    bytes[40] ^= 1;
    writeFileSync(path, bytes);
    expect((await problemsOf(['broken', 's2'].map(at)))[0]).toMatch(/^SHARD_ROWS: is not the file .* \(sha256\)/);
    writeFileSync(join(at('broken'), 'shard-1-of-2.json'), '{ "format": 1, "shard"');
    // The manifest is there, so the shard is not missing besides.
    expect(await problemsOf(['broken', 's2'].map(at))).toEqual([
      'SHARD_MANIFEST: is no manifest of a shard, is cut short or was changed. Run the shard again.',
    ]);
  });

  it('are refused when somebody changed a manifest, each change told as one problem', async () => {
    copy('s1', 'broken');
    const [manifest, rows] = ['json', 'parquet'].map((end) => join(at('broken'), `shard-1-of-2.${end}`));
    const whole = readFileSync(manifest, 'utf8');
    const cut = readFileSync(rows).subarray(0, 2000);
    const changed = async (from: RegExp | string, to: string) => {
      writeFileSync(manifest, whole.replace(from, to));
      return problemsOf(['broken', 's2'].map(at));
    };
    const noManifest = [expect.stringMatching(/^SHARD_MANIFEST: is no manifest of a shard, .* was changed/)];
    expect(await changed('"index": 1', '"index": 2')).toEqual(noManifest);
    expect(await changed('"index": 1', '"index": 7')).toEqual(noManifest);
    expect(await changed('shard-1-of-2.parquet', 'shard-2-of-2.parquet')).toEqual(noManifest);
    expect(await changed('"rows": 12', '"rows": 11')).toEqual([
      'SHARD_ROWS: has 12 rows; its manifest tells of 11 rows for 12 jobs. Run the shard again.',
    ]);
    expect(await changed('"always-on"', '"never-on"')).toEqual([
      expect.stringMatching(/^SHARD_INPUTS: was asked for other bins, years, strategies or variations than /),
    ]);
    // A file cut short whose hash was mended in the manifest, and a folder in its place.
    writeFileSync(rows, cut);
    expect(
      await changed(/"sha256": "[0-9a-f]{64}"/, `"sha256": "${createHash('sha256').update(cut).digest('hex')}"`),
    ).toEqual(['SHARD_ROWS: is no whole Parquet file. Run the shard again.']);
    rmSync(rows);
    mkdirSync(rows);
    expect(await changed('', '')).toEqual(['SHARD_ROWS: is not there, or is no file. Run the shard again.']);
    rmSync(rows, { recursive: true });
  });

  it('are refused when they are cut otherwise, or a file is named for a folder', async () => {
    mkdirSync(at('s13'));
    await sweepInto(at('s13'), farm, { shard: { index: 1, of: 3 } });
    // Which of the two cuts is meant nobody can say, so none is called missing.
    expect(await problemsOf(['s13', 's2'].map(at))).toEqual([
      expect.stringMatching(/^SHARD_INPUTS: is one of 2, not 3: cut otherwise than /),
    ]);
    expect(await problemsOf([join(at('s1'), 'shard-1-of-2.json'), at('s1'), at('s2')])).toEqual([
      expect.stringMatching(/^SHARD_MANIFEST: is a file; shards are named by their folders/),
    ]);
  });

  it('of two seasons: the one that is not of the season as it is now is told, and it alone', async () => {
    const before = smallFarm();
    before.plan = { ...before.plan, season: { ...before.plan.season, title: 'Before', sha256: 'before' } };
    mkdirSync(at('before'));
    await sweepInto(at('before'), before, { shard: { index: 1, of: 2 } });
    expect(await problemsOf(['before', 's2'].map(at))).toEqual([
      expect.stringMatching(
        /^SHARD_INPUTS: was made from other files than the season has now \(its season is called “Before”\)/,
      ),
    ]);
  });

  it('are refused when they were asked for other things', async () => {
    const fewer = smallFarm();
    fewer.plan = { ...fewer.plan, strategies: ['always-on'] };
    await sweepInto(at('other'), fewer, { shard: { index: 1, of: 2 } });
    const told = await problemsOf(['s2', 'other'].map(at));
    // Shard 1/2 is there, so it is not missing besides.
    expect(told).toEqual([
      expect.stringMatching(/^SHARD_INPUTS: was asked for other bins, years, strategies or variations than /),
    ]);
  });
});

describe('results', () => {
  it('hold every column, by the names of summary.json', () => {
    const table = tableFromIPC(readFileSync(join(at('whole'), 'strategies.arrow')));
    // As the contract lists them under `strategies`.
    const contract =
      'bin strategy weather fanHours energyKwh cost endMoisturePct topMoisturePct bottomMoisturePct endTemperatureC dryMatterLossPct reachedTarget reachedOn why';
    const names = table.schema.fields.map(({ name }) => name);
    expect(contract.split(' ').filter((name) => !names.includes(name))).toEqual([]);
    expect(names).toEqual(SWEEP_COLUMNS.map(({ name }) => name));
    expect(table.numRows).toBe(24);
    const weathers = [...new Set([...table.getChild('weather')!].map(String))];
    expect(weathers).toEqual(['season', '2021', '2022', '2023']);
    const books = [...table.getChild('waterImbalance')!, ...table.getChild('heatImbalance')!].map(Number);
    expect(Math.max(...books.map(Math.abs))).toBeLessThan(1e-9);
  });

  it('come through Parquet as they were: missing values, truths, whole doubles', async () => {
    const empty: SweepRow = Object.fromEntries(SWEEP_COLUMNS.map(({ name }) => [name, null]));
    const rows = [
      { ...empty, bin: 'Ä 1', cost: 0.1 + 0.2, reachedTarget: true, fanHours: 5e-324, why: null },
      { ...empty, bin: 'B', reachedTarget: false, cost: -0.0000123456789012345, why: 'Nothing; "quoted", éè' },
      empty,
    ];
    expect(await rowsOfParquet(rowsParquet(rows))).toEqual(rows);
  });
});
