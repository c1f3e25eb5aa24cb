import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { STYLES } from '../../../src/report/html/styles.ts';
import { changedPath, heldAgainst, normalised } from './golden-file.ts';

describe('a golden file', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-golden-'));
  afterAll(() => rmSync(work, { recursive: true, force: true }));
  const path = (name: string) => join(work, name);
  const home = { ci: false, retake: false };

  it('is made where there is none, and never in CI', () => {
    expect(heldAgainst(path('a.svg'), 'one', { ci: true, retake: false })).toMatch(/is not there/);
    expect(heldAgainst(path('a.svg'), 'one', { ci: true, retake: true })).toMatch(/is not there/);
    expect(existsSync(path('a.svg'))).toBe(false);
    expect(heldAgainst(path('a.svg'), 'one', home)).toBeNull();
    expect(readFileSync(path('a.svg'), 'utf8')).toBe('one');
  });
  it('stays as it is where the text differs; the new one stands beside it until they agree', () => {
    writeFileSync(path('b.svg'), 'one');
    for (const ways of [home, { ci: true, retake: true }]) {
      expect(heldAgainst(path('b.svg'), 'two', ways)).toMatch(/differs/);
      expect(readFileSync(path('b.svg'), 'utf8')).toBe('one');
      expect(readFileSync(changedPath(path('b.svg')), 'utf8')).toBe('two');
    }
    expect(heldAgainst(path('b.svg'), 'one', home)).toBeNull();
    expect(existsSync(changedPath(path('b.svg')))).toBe(false);
  });
  it('is replaced when a person says so', () => {
    writeFileSync(path('c.svg'), 'one');
    expect(heldAgainst(path('c.svg'), 'two', { ci: false, retake: true })).toBeNull();
    expect(readFileSync(path('c.svg'), 'utf8')).toBe('two');
  });
  it('forgives half a pixel and a new version, and no word and no number that is read', () => {
    const one = '<g><path d="M10.24 5.1h3.3" /><text x="3.9">2.31 points</text></g>';
    expect(normalised(one.replace('10.24', '10.31').replace('3.9', '4.1'))).toBe(normalised(one));
    // A half may come out a hair to either side.
    expect(normalised(one.replace('10.24', '10.5'))).toBe(normalised(one.replace('10.24', '10.499999999')));
    expect(normalised(one.replace('10.24', '11.9'))).not.toBe(normalised(one));
    expect(normalised(one.replace('2.31', '2.32'))).not.toBe(normalised(one));
    const heard = '<div role="img" aria-label="North 36: 2.31 points"></div>';
    expect(normalised(heard.replace('2.31', '2.32'))).not.toBe(normalised(heard));
    const head = (version: string, sheet: string) =>
      `<meta name="generator" content="fanbook ${version}"><style>${sheet}@page{@top-left{content:"Made-up Farm"}}</style>`;
    expect(normalised(head('0.1.0', STYLES))).toBe(normalised(head('0.2.0', STYLES)));
    // The sheet is the same everywhere; what a page prints at the top of each sheet is its own.
    expect(normalised(head('0.1.0', STYLES))).toContain('<style>…@page{@top-left{content:"Made-up Farm"}}</style>');
  });
});
