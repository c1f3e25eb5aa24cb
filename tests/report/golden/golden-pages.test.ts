import { readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { renderPages } from '../../../src/report/html/pages.ts';
import { type SeasonPages, seasonPages } from '../../support/season-pages.ts';
import { GOLDEN, heldAgainst, WAYS } from './golden-file.ts';
import { inSections, pageText } from './page-text.ts';

const FOLDER = join(GOLDEN, 'pages');
/** So much a person reads through. */
const MOST_BYTES = 150_000;
const KIT = [
  'bin-or-rule.html',
  'bins-compared.html',
  'condition.html',
  'data-quality.html',
  'fan-energy.html',
  'fronts.html',
  'index.html',
  'moisture.html',
  'strategies.html',
] as const;
/** Long ones: a file for each of their sections. */
const CUT = ['methods.html', 'year-end.html'] as const;

describe('golden pages of a small season', () => {
  const warn = vi.spyOn(console, 'warn');
  const error = vi.spyOn(console, 'error');
  let pages: SeasonPages;
  const texts = new Map<string, string>();
  const keep = (name: string, { html, failures }: { html: string; failures: readonly string[] }) => {
    expect(failures, name).toEqual([]);
    expect(html, name).not.toMatch(/class="failure"|\bNaN\b|\bundefined\b|\bInfinity\b|⚠/);
    texts.set(name, pageText(html));
  };
  beforeAll(async () => {
    warn.mockClear();
    error.mockClear();
    pages = await seasonPages();
    for (const page of renderPages(pages.kit)) keep(page.file, page);
    keep('first-look.html', renderPages([pages.firstLook])[0]);
    keep('clients.html', renderPages([pages.clients])[0]);
    keep('of-some-bins.html', renderPages([pages.manyBins]).at(-1)!);
  });
  // Any warning is a failure, whoever caught it.
  afterAll(() => {
    expect(warn).not.toHaveBeenCalled();
    expect(error).not.toHaveBeenCalled();
    warn.mockRestore();
    error.mockRestore();
  });

  it('are all pages of a review', () => {
    expect(pages.kit.map(({ file }) => file).sort()).toEqual([...KIT, ...CUT].sort());
  });
  it.each([...KIT, 'first-look.html', 'clients.html', 'of-some-bins.html'])('%s', (name) => {
    expect(heldAgainst(join(FOLDER, name), String(texts.get(name)), WAYS)).toBeNull();
  });
  it.each(CUT)('%s, a file for each of its sections', (name) => {
    const parts = [...inSections(String(texts.get(name)))];
    const folder = join(FOLDER, basename(name, '.html'));
    const told = parts.map(([id, part]) => heldAgainst(join(folder, `${id}.html`), part, WAYS));
    expect(told.filter((one) => one !== null)).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(parts.map(([id]) => `${id}.html`).sort());
  });
  it('are no longer than a person reads through', () => {
    const names = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
    expect(names.filter((name) => statSync(join(FOLDER, name)).size > MOST_BYTES)).toEqual([]);
  });
});
