import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { halfOf } from '../../scripts/folder/half-file.ts';
import { replaceFolder } from '../../scripts/folder/replace-folder.ts';
import { appendLines, writeTogether, writeWhole } from '../../scripts/sweep/whole-file.ts';
import { ROOT } from '../support/run-script.ts';

/** Takes no byte: every write answers ENOSPC (Linux, full(4)). Other systems have none; tests that need it are left out there. */
const FULL = '/dev/full';
const KNOWN = { marks: ['rejects.csv'], own: /^(data|rejects\.csv)$/ };
let folder = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fanbook-disk-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a disk that takes no more is bad input, not a fault of the kit (POSIX.1-2017 write(): ENOSPC, EFBIG)', () => {
  it.runIf(existsSync(FULL))(
    'of a folder: says what, where, how much is free and what to do; nothing is changed',
    async () => {
      const out = join(folder, 'out');
      mkdirSync(out);
      writeFileSync(join(out, 'rejects.csv'), 'old');
      const full = replaceFolder(out, KNOWN, (building) => {
        writeFileSync(join(building, 'rejects.csv'), 'new');
        writeFileSync(FULL, 'x');
      });
      await expect(full).rejects.toThrow(
        /^OUT_FOLDER \S+\/out cannot be written: the disk is full \(ENOSPC\); \d+\.\d MB are free there\. What stands there stays as it was\. Free some space/,
      );
      expect(readFileSync(join(out, 'rejects.csv'), 'utf8')).toBe('old');
      expect(readdirSync(folder)).toEqual(['out']);
    },
  );

  it.runIf(existsSync(FULL))('of a file of a sweep: the same, and no part of it is left', () => {
    expect(() => appendLines(FULL, 'a run\n')).toThrow(/^OUT_FILE \/dev\/full cannot be written: the disk is full/);
    mkdirSync(join(folder, 'fits.jsonl'));
    // A folder in the file's place is no answer of a full disk.
    expect(() => writeWhole(join(folder, 'fits.jsonl'), 'x')).toThrow(/^EISDIR/);
    expect(readdirSync(folder)).toEqual(['fits.jsonl']);
  });

  it.runIf(existsSync(FULL))(
    'files of a sweep that tell of each other: both are as they were when the second cannot be written',
    () => {
      const [rows, told] = ['strategies.arrow', 'sweep.json'].map((name) => join(folder, name));
      for (const path of [rows, told]) writeFileSync(path, 'old');
      // Where the second is written beside its place, the disk takes nothing.
      symlinkSync(FULL, halfOf(told));
      const both = () =>
        writeTogether([
          [rows, 'new'],
          [told, 'new'],
        ]);
      expect(both).toThrow(/^OUT_FILE \S+\/sweep\.json cannot be written: the disk is full/);
      for (const path of [rows, told]) expect(readFileSync(path, 'utf8')).toBe('old');
      expect(readdirSync(folder).sort()).toEqual(['strategies.arrow', 'sweep.json']);
    },
  );

  it('what the kit itself does wrong stays a fault of the kit', async () => {
    const out = join(folder, 'out');
    const wrong = replaceFolder(out, KNOWN, (building) => writeFileSync(join(building, 'no', 'such', 'folder'), 'x'));
    await expect(wrong).rejects.toThrow(/^ENOENT/);
  });

  it('npm run load under a limit of one block: listed, exit status 1, what stood there stays', () => {
    const season = join(folder, 'season');
    mkdirSync(join(season, 'loaded', 'data'), { recursive: true });
    writeFileSync(join(season, 'loaded', 'rejects.csv'), 'old');
    writeFileSync(join(season, 'season.yaml'), YAML);
    writeFileSync(join(season, 'a.csv'), 'time,bin,cable,sensor,temperature (degF)\n2024-10-04 13:00,B1,C1,1,50\n');
    const load = `ulimit -f 1; exec "${process.execPath}" --import tsx scripts/load.ts "${season}"`;
    const { status, stderr } = spawnSync('bash', ['-c', load], { cwd: ROOT, encoding: 'utf8' });
    expect(stderr).toMatch(
      /One problem; nothing was written\.\nOUT_FOLDER \S+\/loaded cannot be written: a file would be larger than may be written \(EFBIG\)\. What stands there stays/,
    );
    expect(status).toBe(1);
    expect(readFileSync(join(season, 'loaded', 'rejects.csv'), 'utf8')).toBe('old');
    expect(readdirSync(season).sort()).toEqual(['a.csv', 'loaded', 'season.yaml']);
  });
});

const YAML = `format: 1
season: Hand-made
site: { time_zone: America/Chicago, elevation: 300 m }
bins:
  - id: B1
    diameter: 36 ft
    grain: { crop: corn, depth: 15 ft }
    goal: dry
    cables: [{ id: C1, from_centre: 0 ft, sensors: { heights: [2 ft] } }]
files: [{ path: a.csv, holds: grain }]
`;
