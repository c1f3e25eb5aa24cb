import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Who may import whom. A folder may always import itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  air: ['base'],
  grain: ['base', 'air'],
  bin: ['base', 'air', 'grain'],
  money: ['base'],
  simulation: ['base', 'air', 'grain', 'bin', 'money'],
  tables: ['base'],
  season: ['base', 'air', 'grain', 'bin', 'money', 'tables'],
  analysis: ['base', 'air', 'grain', 'bin', 'money', 'simulation', 'tables', 'season'],
  report: ['base', 'tables'],
};

const files = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(ROOT, folder, name));

const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/(?:from|import)\s*\(?\s*'(\.[^']+)'/g)].map((match) =>
    relative(ROOT, join(file, '..', match[1])),
  );

describe('the house', () => {
  it('imports one way, by the table', () => {
    const wrong = files('src').flatMap((file) => {
      const [, room] = relative(ROOT, file).split('/');
      const allowed = MAY_IMPORT[room];
      // The notebooks' door and the words that it offers may use every room.
      if (room === 'notebook.ts' || room === 'notebook') return [];
      if (allowed === undefined) return [`${relative(ROOT, file)} stands in no room of the table`];
      return importsOf(file)
        .filter((target) => target.startsWith('src/'))
        .map((target) => target.split('/')[1])
        .filter((other) => other !== room && !allowed.includes(other))
        .map((other) => `${relative(ROOT, file)} imports ${other}`);
    });
    expect(wrong).toEqual([]);
  });

  it('is told in DEVELOPERS.md as it is', () => {
    const told = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')
      .split('## Where a new thing goes')[0]
      .split('\n')
      .map((line) => line.split('|').map((cell) => cell.trim()))
      .filter(([, room]) => room?.startsWith('`'))
      .map(([, room, , imports]) => [room.slice(1, -1), imports]);
    const held = Object.entries(MAY_IMPORT).map(([room, others]) => [room, others.join(', ') || 'nothing']);
    expect(told).toEqual([...held, ['notebook', 'all']]);
  });

  it('gives notebooks one door', () => {
    const wrong = files('notebooks').flatMap((file) =>
      importsOf(file)
        .filter((target) => target !== 'src/notebook.ts')
        .map((target) => `${relative(ROOT, file)} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('has nothing at the top level beyond the agreed', () => {
    const allowed =
      /^(package(-lock)?\.json|notebooks|src|data-samples|scripts|tests|README\.md|DEVELOPERS\.md|LICENSE|\.ci|\.git|\.gitignore|tsconfig\.json|vitest\.config\.ts|biome\.json|node_modules)$/;
    expect(readdirSync(ROOT).filter((name) => !allowed.test(name))).toEqual([]);
  });

  it('keeps clocks, chance and locales out of src', () => {
    const banned = /\b(Date\.now|Math\.random|toLocale\w*String|Intl\.(?!supportedValuesOf))|new Date\(\)/;
    const wrong = files('src').filter((file) =>
      banned.test(readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')),
    );
    expect(wrong.map((file) => relative(ROOT, file))).toEqual([]);
  });
});
