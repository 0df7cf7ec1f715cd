import { defineConfig } from 'vitest/config';

/**
 * These replace a module of ours, or fill every cache with thousands of guides that nobody asks for again: each has
 * a process of its own.
 */
const apart = ['tests/job/mutation.test.ts', 'tests/shop/reworded.test.ts'];

/**
 * For the whole suite: files share their workers' modules, since loading those anew for each file was half of the
 * work. A single file needs no configuration.
 */
export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    // Generous, since the machine may be busy: a test that hangs fails all the same.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    maxWorkers: '100%',
    globalSetup: 'tests/run-folder.ts',
    projects: [
      {
        extends: true,
        test: { name: 'shared', include: ['tests/**/*.test.ts'], exclude: apart, isolate: false },
      },
      { extends: true, test: { name: 'apart', include: apart, isolate: true } },
    ],
  },
});
