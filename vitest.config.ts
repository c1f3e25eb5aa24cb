import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Two cores: more workers than that only wait for each other.
    maxWorkers: 2,
    // Whole reviews run in some tests; a busy machine takes several times what a quiet one does.
    testTimeout: 180_000,
    hookTimeout: 300_000,
  },
});
