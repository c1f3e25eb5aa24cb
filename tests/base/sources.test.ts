import { expect, it } from 'vitest';
import { METHODS, methodsOf } from '../../src/base/methods/methods.ts';
import { citation, SOURCES, sourceOf } from '../../src/base/sources/sources.ts';
import { NOTEBOOKS } from '../report/example-pages.ts';

it('the bibliography is sorted, has each key once, and says enough to find the work', () => {
  const keys = SOURCES.map((source) => source.key);
  expect(keys).toEqual([...new Set(keys)].sort());
  for (const source of SOURCES) {
    expect(citation(source), source.key).toMatch(/^\S.*\. .*\.$/);
    // What was read at its source can be read again there, or stands on paper under a number.
    if (source.url !== undefined) expect(source.url).toMatch(/^https?:\/\//);
  }
  expect(() => sourceOf('nobody-1900')).toThrow(/nobody-1900/);
});

it('every method is whole, cites works that exist, and belongs to a page that exists', () => {
  const ids = METHODS.map((method) => method.id);
  expect(new Set(ids).size).toBe(ids.length);
  const pages = NOTEBOOKS.map((notebook) => notebook.id);
  for (const method of METHODS) {
    expect(method.statement, method.id).toMatch(/\.$/);
    for (const key of method.sourceKeys) expect(sourceOf(key).key).toBe(key);
    expect(method.usedOn.length, method.id).toBeGreaterThan(0);
    for (const page of method.usedOn) expect(pages, method.id).toContain(page);
  }
  for (const page of ['overview', 'fan-energy', 'moisture', 'fronts', 'strategies'])
    expect(methodsOf(page).length, page).toBeGreaterThan(0);
});
