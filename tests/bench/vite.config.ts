import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The benches are bundled first, so that they time the model as it ships and not the test runner's transforms. */
export default defineConfig({
  root,
  publicDir: false,
  logLevel: 'warn',
  build: {
    ssr: 'tests/bench/wall-day.ts',
    outDir: '.build/bench',
    emptyOutDir: true,
    target: 'node20',
  },
  ssr: { noExternal: true },
});
