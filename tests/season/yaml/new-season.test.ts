import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { readSeason } from '../../../src/season/read-season.ts';
import { starterSeason } from '../../../src/season/yaml/starter.ts';
import { EXAMPLE_FILES } from './contract-example.ts';
import { read, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

function run(...args: string[]): { status: number; output: string } {
  try {
    const output = execFileSync(process.execPath, ['--import', 'tsx', 'scripts/new-season.ts', ...args], {
      cwd: ROOT,
      encoding: 'utf8',
      stdio: 'pipe',
    });
    return { status: 0, output };
  } catch (error) {
    const { status, stdout, stderr } = error as { status: number; stdout: string; stderr: string };
    return { status, output: stdout + stderr };
  }
}

describe('new-season', () => {
  it('writes a season that reads, with the schema for editors, and never over another', async () => {
    const folder = join(seasonFolder({}), 'mine');
    expect(run(folder)).toMatchObject({ status: 0 });
    const season = await readSeason(folder);
    expect(season.bins.map((bin) => bin.id)).toEqual(['B1']);
    const yaml = readFileSync(join(folder, 'season.yaml'), 'utf8');
    const [, schema] = /^# yaml-language-server: \$schema=(.*)\n/.exec(yaml) as RegExpExecArray;
    expect(JSON.parse(readFileSync(join(folder, schema), 'utf8')).title).toBe('fanbook season');
    writeFileSync(join(folder, 'season.yaml'), 'mine\n');
    expect(run(folder)).toMatchObject({ status: 1, output: expect.stringContaining('already') });
    expect(readFileSync(join(folder, 'season.yaml'), 'utf8')).toBe('mine\n');
  });

  it('tells how it is used', () => {
    expect(run('--help')).toMatchObject({ status: 0, output: expect.stringContaining('Usage: new-season') });
    expect(run()).toMatchObject({ status: 2 });
    expect(run('--no-such')).toMatchObject({ status: 2 });
  });

  it('offers comments that read too once they are taken away', async () => {
    // A comment that holds a key or an entry of a list is YAML; the first two lines and notes after values are not.
    const full = starterSeason(null)
      .split('\n')
      .map((line, i) => (i < 2 ? line : line.replace(/^( *)# (?= *(?:- )?[{a-z_]+[:{ ])/, '$1')))
      .join('\n');
    const season = await read(full, EXAMPLE_FILES);
    expect(season.tariffs).toHaveLength(1);
    expect(season.bins[0].cables).toHaveLength(2);
    expect(season.files).toHaveLength(7);
    expect(season.prices.soybean.schedules).toHaveLength(3);
    expect(season.fans[0].heater).not.toBeNull();
  });
});
