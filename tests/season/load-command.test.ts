import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fromIpc } from '../../src/tables/arrow.ts';
import { folderOf } from './readers/season-of.ts';

const root = join(import.meta.dirname, '../..');
const load = (...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'scripts/load.ts', ...args], { cwd: root, encoding: 'utf8' });

const yaml = `format: 1
season: Hand-made
site: { time_zone: America/Chicago, elevation: 300 m }
bins:
  - id: B1
    diameter: 36 ft
    floor: full
    grain: { crop: corn, depth: 15 ft }
    goal: dry
    air: up
    fans: []
    cables:
      - { id: C1, from_centre: 0 ft, sensors: { heights: [2 ft] } }
files:
  - path: a.csv
    holds: grain
`;
const csv = 'time,bin,cable,sensor,temperature (degF)\n2024-10-04 13:00,B1,C1,1,50\n2024-10-04 14:00,B1,C1,1,ERR\n';

describe('npm run load', () => {
  it('writes the tables and the rejects', () => {
    const { folder, remove } = folderOf({ 'season.yaml': yaml, 'a.csv': csv });
    const { status, stdout, stderr } = load(folder);
    expect(stderr).toContain('reading a.csv');
    expect(status, stderr).toBe(0);
    expect(stdout).toContain('2 rows, 2 cells: 0 missing, 1 rejected, 0 outside');
    expect(fromIpc(readFileSync(join(folder, 'loaded/data/readings.arrow'))).numRows).toBe(2);
    expect(readFileSync(join(folder, 'loaded/rejects.csv'), 'utf8')).toContain(
      'a.csv,3,temperature (degF),ERR,is no number',
    );
    remove();
  });
  it('lists what is wrong, writes nothing and ends with 1', () => {
    const { folder, remove } = folderOf({ 'season.yaml': yaml, 'a.csv': 'time,bin\n' });
    const { status, stderr } = load(folder, '--out', join(folder, 'out'));
    expect(status).toBe(1);
    expect(stderr).toMatch(/FILE_EMPTY a\.csv:1 has a header/);
    expect(existsSync(join(folder, 'out'))).toBe(false);
    expect(readdirSync(folder).sort()).toEqual(['a.csv', 'season.yaml']);
    remove();
  });
  it('explains itself', () => {
    const help = load('--help');
    expect(help.status).toBe(0);
    expect(help.stdout).toMatch(/Usage: load .*<season-folder>[\s\S]*--out <dir>[\s\S]*Exit status/);
    // 2: a wrong command line, as the help says.
    expect(load().status).toBe(2);
  });
});
