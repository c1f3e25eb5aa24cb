import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { assertReplaceable, replaceFolder } from '../../scripts/folder/replace-folder.ts';

const KNOWN = { marks: ['rejects.csv'], own: /^(data|rejects\.csv)$/ };
let folder = '';
let out = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fanbook-folder-'));
  out = join(folder, 'out');
  mkdirSync(out);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a folder written whole or not at all', () => {
  it('stays as it was when the writing fails, and leaves nothing beside it', async () => {
    writeFileSync(join(out, 'rejects.csv'), 'old');
    const fail = replaceFolder(out, KNOWN, (building) => {
      writeFileSync(join(building, 'rejects.csv'), 'half');
      throw new Error('disk full');
    });
    await expect(fail).rejects.toThrow('disk full');
    expect(readFileSync(join(out, 'rejects.csv'), 'utf8')).toBe('old');
    await replaceFolder(out, KNOWN, (building) => writeFileSync(join(building, 'rejects.csv'), 'new'));
    expect(readFileSync(join(out, 'rejects.csv'), 'utf8')).toBe('new');
    expect(readdirSync(folder)).toEqual(['out']);
  });

  it('is not taken for its own when somebody keeps other files in it', async () => {
    await expect(assertReplaceable(out, join(folder, 'season'), KNOWN)).resolves.toBeUndefined();
    mkdirSync(join(out, 'data'));
    await expect(assertReplaceable(out, join(folder, 'season'), KNOWN)).rejects.toThrow(/no earlier output/);
    writeFileSync(join(out, 'rejects.csv'), '');
    await expect(assertReplaceable(out, join(folder, 'season'), KNOWN)).resolves.toBeUndefined();
    writeFileSync(join(out, 'family-photos.txt'), 'keep');
    await expect(assertReplaceable(out, join(folder, 'season'), KNOWN)).rejects.toThrow(/family-photos/);
    await expect(assertReplaceable(folder, join(out, 'season'), KNOWN)).rejects.toThrow(/holds the season/);
  });

  it('is told before the work where it cannot be written, and nothing is left of the trial', async () => {
    const season = join(folder, 'season');
    writeFileSync(join(folder, 'file'), '');
    const below = join(folder, 'file', 'deeper', 'out');
    await expect(assertReplaceable(below, season, KNOWN)).rejects.toThrow(
      /^OUT_FOLDER .* cannot be written \(ENOTDIR\)/,
    );
    await expect(assertReplaceable(join(out, 'new', 'deeper'), season, KNOWN)).resolves.toBeUndefined();
    expect(readdirSync(out)).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(['file', 'out']);
  });
});
