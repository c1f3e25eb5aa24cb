import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';

// One analysis of one bin breaks; nothing else is touched.
vi.mock('../../src/analysis/moisture/bin-temperature.ts', async (original) => {
  const real = await original<typeof import('../../src/analysis/moisture/bin-temperature.ts')>();
  return {
    ...real,
    binTemperature: (...given: Parameters<typeof real.binTemperature>) => {
      if (given[0].id === 'B1') throw new Error('broken on purpose');
      return real.binTemperature(...given);
    },
  };
});
vi.mock('../../notebooks/methods.ts', async (original) => {
  const real = await original<typeof import('../../notebooks/methods.ts')>();
  const { defineNotebook } = await import('../../src/notebook.ts');
  const { id, title, question } = real.default;
  return {
    default: defineNotebook({ id, title, question }, () => {
      throw new Error('page broken on purpose');
    }),
  };
});

const work = mkdtempSync(join(tmpdir(), 'fanbook-partly-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

it('a broken bin and a broken page keep their headings, the others stand, and the exit status is 3', async () => {
  const { EXIT } = await import('../../scripts/command-line.ts');
  const { reviewCommand } = await import('../../scripts/review/command.ts');
  const { makeSeasonFolder, SMALL_SEASON } = await import('../support/season-folder.ts');
  const season = join(work, 'season');
  const { fanHours } = makeSeasonFolder(season, { ...SMALL_SEASON, bins: 2 });
  const told: string[] = [];
  const spy = vi.spyOn(process.stderr, 'write').mockImplementation((text) => told.push(String(text)) > 0);
  const status = await reviewCommand(season, { out: join(work, 'out') });
  spy.mockRestore();
  expect(status).toBe(EXIT.partly);
  expect(told.join('')).toMatch(/bin B1: broken on purpose[\s\S]*page broken on purpose/);

  const summary = JSON.parse(readFileSync(join(work, 'out', 'summary.json'), 'utf8'));
  expect(summary.bins[0].fan).toMatchObject({ hours: null, why: expect.stringContaining('broken on purpose') });
  expect(Math.abs(summary.bins[1].fan.hours / fanHours - 1)).toBeLessThan(0.005);
  const methods = readFileSync(join(work, 'out', 'methods.html'), 'utf8');
  expect(methods).toMatch(/<h1[^>]*>Methods<\/h1>/);
  expect(methods).toContain('page broken on purpose');
  expect(readFileSync(join(work, 'out', 'moisture.html'), 'utf8')).toContain('broken on purpose');
});
