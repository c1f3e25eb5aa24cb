import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { besideOf } from '../../scripts/folder/leftovers.ts';
import { PROCESS_MARK } from '../../scripts/folder/process-mark.ts';
import { replaceFolder } from '../../scripts/folder/replace-folder.ts';
import { writeWhole } from '../../scripts/sweep/whole-file.ts';

const KNOWN = { marks: ['rejects.csv'], own: /^(data|rejects\.csv)$/ };
const HERE = PROCESS_MARK.slice(PROCESS_MARK.indexOf('-') + 1);
let folder = '';
let out = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fanbook-left-'));
  out = join(folder, 'review');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The mark of a process that has ended. */
function ended(): string {
  return `${spawnSync(process.execPath, ['-e', '']).pid}-${HERE}`;
}

function left(what: 'new' | 'old', mark: string, ...names: string[]): string {
  const path = besideOf(out, what, mark);
  mkdirSync(path);
  for (const name of names) writeFileSync(join(path, name), what);
  return path;
}

const write = (text = 'newest') =>
  replaceFolder(out, KNOWN, (building) => writeFileSync(join(building, 'rejects.csv'), text));
const names = () => readdirSync(folder).sort();
const stands = () => readFileSync(join(out, 'rejects.csv'), 'utf8');

describe('what a killed run left beside a folder', () => {
  it('goes with the next run: half-built, empty, and the one before where the new one stands', async () => {
    mkdirSync(out);
    writeFileSync(join(out, 'rejects.csv'), 'new');
    left('new', ended(), 'rejects.csv', 'data');
    left('new', ended());
    left('old', ended(), 'rejects.csv');
    await write();
    expect(names()).toEqual(['review']);
    expect(stands()).toBe('newest');
  });

  it('stays where its process is alive, runs on another machine, or somebody else put something into it', async () => {
    const child = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)']);
    try {
      left('new', `${child.pid}-${HERE}`, 'rejects.csv');
      left('new', ended().replace(HERE, HERE === '00000000' ? '11111111' : '00000000'), 'rejects.csv');
      left('new', ended(), 'rejects.csv', 'family-photos.txt');
      mkdirSync(join(folder, '.review-new-year'));
      mkdirSync(join(folder, `.preview-new-${ended()}`));
      const before = names();
      await write();
      expect(names()).toEqual([...before, 'review'].sort());
    } finally {
      child.kill();
    }
  });

  it('is put back where the run was killed between the two: the output before is not lost when the next run fails', async () => {
    left('old', ended(), 'rejects.csv');
    left('new', ended(), 'rejects.csv');
    const fail = replaceFolder(out, KNOWN, () => {
      throw new Error('no');
    });
    await expect(fail).rejects.toThrow('no');
    expect(names()).toEqual(['review']);
    expect(stands()).toBe('old');
  });
});

it('half-written files of killed runs go, those of live ones and of others stay', () => {
  const path = join(folder, 'sweep.json');
  const live = `${process.ppid}-${HERE}`;
  for (const name of [ended(), live, 'summer']) writeFileSync(`${path}.new-${name}`, '');
  writeWhole(path, '{}');
  expect(names()).toEqual(['sweep.json', `sweep.json.new-${live}`, 'sweep.json.new-summer'].sort());
});
