import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Node runs no TypeScript by itself. */
export default defineConfig({
  root,
  publicDir: false,
  logLevel: 'warn',
  build: {
    ssr: 'tests/load/load.ts',
    outDir: '.build/load',
    emptyOutDir: true,
    target: 'node20',
    // Bundled, it would take the bundle for itself started by hand, and build the program.
    rolldownOptions: { external: /prepare\.mjs$/ },
  },
  ssr: { noExternal: true, external: ['autocannon'] },
});
