import { readFileSync } from 'node:fs';
import { globSync } from 'tinyglobby';
import { expect, it } from 'vitest';
import { ALONE } from '../../vitest.config.ts';

// Files of a worker share modules: one that breaks a module on purpose would find it loaded, or leave it broken to the next.
it('test files that break a module are listed as running alone, and what is listed is there', () => {
  const alone = globSync(ALONE);
  for (const pattern of ALONE) expect(globSync(pattern), pattern).not.toEqual([]);
  const breaking = globSync('tests/**/*.test.ts').filter((path) =>
    /^\s*vi\.(mock|doMock)\(/m.test(readFileSync(path, 'utf8')),
  );
  expect(breaking.length).toBeGreaterThan(0);
  expect(breaking.filter((path) => !alone.includes(path))).toEqual([]);
});
