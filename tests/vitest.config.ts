import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  // Not in node_modules, which holds exactly what the lock file names.
  cacheDir: '.test-output/vite',
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          // The tests share no state worth a fresh process each; the unit library alone takes a second to load.
          isolate: false,
          // Many wait for processes of their own.
          maxWorkers: 2,
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          // After the unit tests and two files at a time: much of a browser test is waiting, but more would starve each other.
          sequence: { groupOrder: 1 },
          maxWorkers: 2,
          // Each file starts a browser of its own; what drives it takes five seconds to load.
          isolate: false,
          testTimeout: 60_000,
          // What a page shows follows what it computes; a second is short on a busy machine.
          expect: { poll: { timeout: 15_000 } },
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
