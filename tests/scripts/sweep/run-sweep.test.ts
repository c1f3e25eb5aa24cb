import { execFileSync, spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { tableFromIPC } from 'apache-arrow';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sweepBeside } from '../../../scripts/review/sweep-beside.ts';
import { readSweep } from '../../../scripts/sweep/read-sweep.ts';
import { mergeSweep, runSweep } from '../../../scripts/sweep/run-sweep.ts';
import { type SweepText, sweepOptions } from '../../../scripts/sweep/sweep-options.ts';
import { InputError } from '../../../src/base/errors.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

const HOUR_MS = 3_600_000;
/** Fitted in a second or two. */
const SHORT = { ...SMALL_SEASON, cables: 1, hours: 24 * 8 };
const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
let dir: string;
let bare: string;
let past: string;

/** Hourly weather of the season's dates in another year; without the hours from `from` to `to` of it. */
function history(year: number, from = 0, to = 0): string {
  const startMs = Date.UTC(year, 9, 1);
  return Array.from({ length: 24 * 45 }, (_, h) => {
    if (h > from && h < to) return '';
    const t = 12 - h / 200 + 6 * Math.sin((2 * Math.PI * (h - 9)) / 24);
    return `${new Date(startMs + h * HOUR_MS).toISOString().slice(0, 16)}Z,${t.toFixed(1)},${(72 - t).toFixed(0)}\n`;
  }).join('');
}

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'run-sweep-'));
  bare = join(dir, 'bare');
  past = join(dir, 'past');
  makeSeasonFolder(bare, SHORT);
  makeSeasonFolder(past, SHORT);
  writeFileSync(join(past, 'weather', 'past.csv'), `time,t,rh\n${history(2021)}${history(2022, 300, 400)}`);
  appendFileSync(
    join(past, 'season.yaml'),
    '  - { path: weather/past.csv, holds: weather, role: history, columns: { time: time, temperature: { column: t, unit: degC }, humidity: { column: rh, unit: "%" } } }\n',
  );
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

async function sweep(folder: string, out: string, text: SweepText = {}) {
  const said: string[] = [];
  const done = await runSweep(folder, join(dir, out), sweepOptions({ workers: '1', ...text }), (line) =>
    said.push(line),
  );
  return { said, done, out: join(dir, out) };
}

async function messagesOf(run: Promise<unknown>): Promise<string[]> {
  try {
    await run;
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ message }) => message);
    throw error;
  }
  return [];
}

describe('npm run sweep', () => {
  it('says once that a season has no other year, and runs its own', async () => {
    const { said, out } = await sweep(bare, 'o-bare', { strategies: 'always-on,as-logged' });
    expect(said.filter((line) => line.includes('no other year is on file'))).toHaveLength(1);
    const table = tableFromIPC(readFileSync(join(out, 'strategies.arrow')));
    expect([...table.getChild('weather')!].map(String)).toEqual(['season', 'season']);
    expect(await messagesOf(sweep(bare, 'o-none', { years: '2001-2003,2007' }))).toEqual([
      expect.stringMatching(
        /^--years has 2001 to 2003 and 2007, for which no weather is on file; .*2024.*role: history/,
      ),
    ]);
    expect(existsSync(join(dir, 'o-none'))).toBe(false);
  });

  it('runs the season’s own year alone where that is asked for, and does not say that none is on file', async () => {
    const { said } = await sweep(past, 'o-own', { strategies: 'always-on', years: 'season' });
    expect(said).toContain('Weather  this season alone, as --years asks');
    expect(said.join()).not.toContain('on file');
    const one = await sweep(past, 'o-one', { strategies: 'always-on', years: '2021' });
    expect(one.said).toContain('Weather  1 year beside the season');
  });

  it('plans each year on file, and withholds the numbers of a model that is not trusted', async () => {
    const { said, out } = await sweep(past, 'o-past', { strategies: 'always-on,night-hours', vary: 'fill-date' });
    const table = tableFromIPC(readFileSync(join(out, 'strategies.arrow')));
    const rows = table.toArray().map((row) => row.toJSON());
    expect(rows).toHaveLength(3 * 5 * 2);
    // Either a number or a sentence why there is none.
    for (const row of rows) expect(row.fanHours === null ? typeof row.why : 'string').toBe('string');
    const told = JSON.parse(readFileSync(join(out, 'sweep.json'), 'utf8'));
    expect(told.plan.bins[0].weathers).toEqual(['season', '2021', '2022']);
    // The made log is no bin's: its model is not trusted, and that is told once, not by the year.
    expect(told.leftOut).toEqual([
      { bin: 'B1', weather: 'all', why: expect.stringMatching(/^The model .* not trusted/) },
    ]);
    expect(said.filter((line) => line.startsWith('Left out'))).toEqual([
      expect.stringMatching(/^Left out B1: The model of the bin is not trusted/),
    ]);
    expect(told.regretAgainst).toBe('cheapest strategy that reached the target');
  });

  it('merges shards of the command into the bytes of the whole', async () => {
    const text = { strategies: 'always-on,night-hours' };
    const whole = await sweep(past, 'm-whole', text);
    for (const index of [1, 2]) await sweep(past, `m-${index}`, { ...text, shard: `${index}/2` });
    await mergeSweep(
      past,
      join(dir, 'm-all'),
      [1, 2].map((index) => join(dir, `m-${index}`)),
    );
    for (const name of ['strategies.arrow', 'sweep.json']) {
      expect(readFileSync(join(dir, 'm-all', name)).equals(readFileSync(join(whole.out, name)))).toBe(true);
    }
    // The season changes under the shards.
    appendFileSync(join(past, 'weather', 'past.csv'), history(2020));
    const told = await messagesOf(mergeSweep(past, join(dir, 'm-late'), [join(dir, 'm-1')]));
    expect(told[0]).toMatch(
      /^was made from other files than the season has now \(its season is called “Made for a test”\)/,
    );
    expect(told[1]).toMatch(/^shard 2\/2 is in none of the folders/);
    expect(existsSync(join(dir, 'm-late'))).toBe(false);
  });

  it('is read again beside its season while files and code are those it was made of', async () => {
    const folder = join(dir, 'read');
    makeSeasonFolder(folder, SHORT);
    const season = await readSeason(folder);
    expect(readSweep(season).why).toMatch(/^No sweep stands beside this season/);
    await runSweep(folder, null, sweepOptions({ workers: '1', strategies: 'always-on' }), () => {});
    const said: string[] = [];
    const more = sweepOptions({ workers: '1', strategies: 'always-on,night-hours' });
    await runSweep(folder, null, more, (line) => said.push(line));
    // What was fitted for the first stands for the second.
    expect(said.join('\n')).toMatch(/^Model {4}.*: not trusted, as fitted before\. /m);
    const read = readSweep(season);
    expect(read.why).toBeNull();
    expect(read.summary?.leftOut).toEqual([expect.objectContaining({ bin: 'B1' })]);
    const told = join(folder, 'sweep', 'sweep.json');
    const text = readFileSync(told, 'utf8');
    writeFileSync(told, text.replace(/"code": "[0-9a-f]+"/, '"code": "other"'));
    expect(readSweep(season).why).toMatch(/made by another version of the kit/);
    writeFileSync(told, '{');
    expect(readSweep(season).why).toMatch(/can’t be read/);
    writeFileSync(told, text);
    appendFileSync(join(folder, 'season.yaml'), '# a line more\n');
    expect(readSweep(season).why).toMatch(/made when its files were others/);
    // A review that asks for none says that this one is not taken.
    const heard: string[] = [];
    const beside = { loaded: { season }, review: {} } as unknown as Parameters<typeof sweepBeside>[0];
    await sweepBeside(beside, false, (line) => heard.push(line));
    expect(heard).toEqual([expect.stringMatching(/^Sweep {4}left out: .* made when its files were others/)]);
    rmSync(join(folder, 'sweep'), { recursive: true });
    await sweepBeside(beside, false, (line) => heard.push(line));
    expect(heard).toHaveLength(1);
  });

  it('refuses a bin that is not there', async () => {
    expect(await messagesOf(sweep(bare, 'o-none', { bins: 'b1' }))).toEqual([
      '--bins names "b1"; there are B1. Did you mean "B1"?',
    ]);
  });

  it('leaves a folder with files of somebody alone', async () => {
    writeFileSync(join(dir, 'm-1', 'mine.txt'), 'mine');
    const told = await messagesOf(sweep(bare, 'm-1'));
    expect(told[0]).toMatch(/holds files of its own \(mine\.txt\); it is left alone/);
  });

  it('ends with 2 and one list on a wrong command line, with 0 on --help', () => {
    const run = (...args: string[]) =>
      spawnSync(process.execPath, ['--import', 'tsx', 'scripts/sweep.ts', ...args], { cwd: ROOT, encoding: 'utf8' });
    const wrong = run(bare, '--strategies', 'nightly', '--years', '1');
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toMatch(/^2 problems; nothing was written\.\n/);
    const help = execFileSync(process.execPath, ['--import', 'tsx', 'scripts/sweep.ts', '--help'], { cwd: ROOT });
    for (const option of ['years', 'strategies', 'bins', 'vary', 'by', 'out', 'workers', 'shard', 'merge']) {
      expect(String(help)).toContain(`--${option} `);
    }
  });
});
