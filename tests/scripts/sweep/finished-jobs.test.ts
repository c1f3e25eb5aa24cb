import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FinishedJobs } from '../../../scripts/sweep/finished-jobs.ts';

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'finished-'));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const path = () => join(dir, 'finished.jsonl');
const keysIn = () =>
  readFileSync(path(), 'utf8')
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => JSON.parse(line)[0]);
const add = (jobs: FinishedJobs, ...keys: string[]) =>
  jobs.add(keys.map((key) => [key, { numbers: null, why: 'Made.' }] as const));

describe('runs kept in a file', () => {
  it('keep those of other sweeps while they are few', () => {
    add(new FinishedJobs(path(), 4), 'old', 'older');
    const next = new FinishedJobs(path(), 4);
    add(next, 'new');
    next.rewrite();
    expect(keysIn()).toEqual(['new', 'old', 'older']);
  });

  it('drop those that nobody asked for once there are too many, and none that was', () => {
    add(new FinishedJobs(path(), 4), 'old', 'older', 'asked');
    const next = new FinishedJobs(path(), 4);
    expect(next.get('asked')?.why).toBe('Made.');
    add(next, 'new', 'newer');
    next.rewrite();
    expect(keysIn()).toEqual(['asked', 'new', 'newer']);
    expect(new FinishedJobs(path(), 4).get('old')).toBeUndefined();
  });
});
