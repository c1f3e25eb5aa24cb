import { defineConfig } from 'vitest/config';

/** What counts bytes of the heap wants code that nothing else has run before; what breaks a module on purpose wants one that nobody has loaded. */
export const ALONE = [
  'tests/**/{bed,kernel,run}-bytes.test.ts',
  'tests/analysis/review-season.test.ts',
  'tests/scripts/notebook-unheard.test.ts',
  'tests/scripts/partly.test.ts',
  'tests/scripts/threads/threaded-what-ifs.test.ts',
];

export default defineConfig({
  test: {
    // Two cores: more workers than that only wait for each other.
    maxWorkers: 2,
    // Whole reviews run in some tests; a busy machine takes several times what a quiet one does.
    testTimeout: 180_000,
    hookTimeout: 300_000,
    projects: [
      // Files of a worker share the modules that they load, and the sample once it is read: half as long as each for itself.
      { extends: true, test: { name: 'together', isolate: false, include: ['tests/**/*.test.ts'], exclude: ALONE } },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
  },
});
