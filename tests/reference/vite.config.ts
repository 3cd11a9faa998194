import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The checks are bundled, so that plain node runs them; packages stay outside, one of them finds its own parts by their place. */
export default defineConfig({
  root,
  publicDir: false,
  logLevel: 'warn',
  build: {
    ssr: 'tests/reference/validate.ts',
    outDir: '.build/validate',
    emptyOutDir: true,
    target: 'node20',
  },
});
