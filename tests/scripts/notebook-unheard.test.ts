import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { type Watching, watchNotebook } from '../../scripts/notebook/watch/watch-notebook.ts';

const { draws } = vi.hoisted(() => ({ draws: [] as string[] }));
// A watcher that is told nothing, as now and then a save is lost on its way.
vi.mock('chokidar', () => ({
  watch: () => ({ on: () => {}, add: () => {}, unwatch: () => {}, close: async () => {} }),
}));
vi.mock('../../scripts/notebook/watch/drawer.ts', () => ({
  Drawer: class {
    draw = () => draws.push('draw');
    renew = () => draws.push('renew');
    end = () => {};
  },
}));

const work = mkdtempSync(join(tmpdir(), 'fanbook-unheard-'));
let watching: Watching | null = null;
afterEach(async () => {
  await watching?.end();
  rmSync(work, { recursive: true, force: true });
});

it('a save that the watcher does not tell is seen by the file itself, as are a file that goes and one that comes back', async () => {
  const season = join(work, 'season');
  const notebook = join(work, 'own.ts');
  mkdirSync(season);
  writeFileSync(join(season, 'season.yaml'), 'format: 1\n');
  writeFileSync(notebook, 'export default 1;\n');
  watching = await watchNotebook({
    notebook,
    seasonFolder: season,
    models: false,
    port: 0,
    generatedAtMs: 0,
    say: () => {},
  });
  expect(draws).toEqual(['draw']);
  const next = (count: number) => vi.waitFor(() => expect(draws).toHaveLength(count), { timeout: 20_000 });
  writeFileSync(notebook, 'export default 2;\n');
  await next(2);
  renameSync(notebook, `${notebook}.away`);
  await next(3);
  renameSync(`${notebook}.away`, notebook);
  await next(4);
  writeFileSync(join(season, 'season.yaml'), 'format: 1 \n');
  await next(5);
  expect(draws).toEqual(['draw', 'draw', 'draw', 'draw', 'renew']);
});
