import { relative, resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { long } from './samples.ts';

const mutation = 'tests/job/mutation.test.ts';

/**
 * These replace a module of ours, or, with all samples, fill every cache with thousands of guides that nobody asks for
 * again: each has a process of its own.
 */
const apart = ['tests/shop/reworded.test.ts', ...(long ? [mutation] : [])];

/**
 * Most of what a test runs is run for a moment only, and optimizing it took two fifths of the workers' time under Node 20:
 * its V8 is to wait nine times as long as of itself (67,584 bytes of bytecode) before it does. Later ones compile such
 * code in a cheaper way first, and no longer know the option.
 */
const optimizeLater = process.versions.node.startsWith('20.') ? ['--interrupt-budget=600000'] : [];

const repository = resolve(import.meta.dirname, '..');

/**
 * Tests name the sources, and `npm test` has them run these as compiled just before by `tests/run.sh`: to compile each
 * file as it is asked for took a tenth of the work.
 */
const asCompiled: Plugin = {
  name: 'as-compiled',
  enforce: 'pre',
  resolveId(id, importer) {
    if (!importer || !id.startsWith('.')) return null;
    const path = relative(repository, resolve(importer, '..', id));
    return /^src\/.*\.ts$/.test(path) ? `${repository}/compiled/${path.slice(4, -3)}.js` : null;
  },
};

/** Begins with what takes longest, so that at the end no core waits for another. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isLong = ({ moduleId }: TestSpecification) =>
      moduleId.includes('/tests/browser/') || [...apart, mutation].some((path) => moduleId.endsWith(path));
    const sorted = await super.sort(files);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

/**
 * For the whole suite: files share their workers' modules, since loading those anew for each file was half of the
 * work. A single file needs no configuration.
 */
export default defineConfig({
  test: {
    root: repository,
    // Generous, since the machine may be busy: a test that hangs fails all the same.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    maxWorkers: '100%',
    // Guides make much that is dropped at once: a larger young generation spares a tenth of the work.
    execArgv: ['--max-semi-space-size=64', ...optimizeLater],
    globalSetup: 'tests/run-folder.ts',
    setupFiles: 'tests/equal-bytes.ts',
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        plugins: process.env.COMPILED ? [asCompiled] : [],
        test: {
          name: 'shared',
          include: ['tests/**/*.test.ts'],
          exclude: apart,
          isolate: false,
          server: { deps: { external: [/\/compiled\/.*\.js$/] } },
        },
      },
      { extends: true, test: { name: 'apart', include: apart, isolate: true } },
    ],
  },
});
