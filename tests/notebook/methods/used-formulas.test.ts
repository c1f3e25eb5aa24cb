import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FORMULAS } from '../../../src/notebook/methods/formulas.ts';
import { USED_WHEN, usedFormulas } from '../../../src/notebook/methods/used-formulas.ts';
import { exampleInput } from '../../report/example-review.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const ROOMS = /^src\/(air|grain|bin|money)\//;

/** Names of functions that a file takes from the rooms of formulas; types left out. */
function takenBy(file: string): { name: string; from: string }[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  return [...text.matchAll(/^import \{([^}]+)\} from '(\.[^']+)'/gm)].flatMap(([, names, path]) => {
    const from = relative(ROOT, join(ROOT, file, '..', path));
    if (!ROOMS.test(from)) return [];
    return names
      .split(',')
      .map((name) => name.trim().split(' as ')[0])
      .filter((name) => name !== '' && !name.startsWith('type '))
      .map((name) => ({ name, from }));
  });
}

const filesOf = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));

describe('formulas that a season’s review works with', () => {
  const taken = [...filesOf('src/analysis'), ...filesOf('src/season')].flatMap((file) =>
    takenBy(file).map((one) => ({ ...one, file })),
  );

  it('are all that the analysis and the loader import: none is left among the offered', () => {
    const lacking = taken.flatMap(({ name, file }) =>
      FORMULAS.filter((formula) => formula.functions.includes(name))
        // One function may stand on several formulas, as that of the isotherms: one of them is enough.
        .some((formula) => formula.id in USED_WHEN) || !FORMULAS.some((formula) => formula.functions.includes(name))
        ? []
        : [`${file} imports ${name}: say in src/notebook/methods/used-formulas.ts when a season uses it`],
    );
    expect([...new Set(lacking)]).toEqual([]);
  });

  it('are no more than these, and what stands with them or under them', async () => {
    // What an imported file itself imports may be called, and so may what stands in it.
    const files = new Set(taken.map((one) => one.from));
    for (const file of [...files]) for (const next of takenBy(file)) files.add(next.from);
    const modules = await Promise.all([...files].map((file) => import(join(ROOT, file))));
    const names = new Set(modules.flatMap((module) => Object.keys(module)));
    for (const id of Object.keys(USED_WHEN)) {
      const functions = FORMULAS.find((one) => one.id === id)?.functions ?? [];
      expect(functions.length, id).toBeGreaterThan(0);
      expect(
        functions.some((name) => names.has(name)),
        id,
      ).toBe(true);
    }
  });

  it('follow what the season has', () => {
    const { season } = exampleInput().loaded;
    const all = usedFormulas(season);
    expect(all.has('sensor-shares')).toBe(true);
    const none = usedFormulas({ ...season, bins: [], tariffs: [], files: [], prices: {} });
    expect([...none]).toEqual([]);
  });
});
