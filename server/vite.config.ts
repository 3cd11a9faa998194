import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Builds the command line and the server to .build/server, climate files included. */
export default defineConfig({
  root,
  logLevel: 'warn',
  build: {
    ssr: true,
    target: 'node20',
    outDir: '.build/server',
    emptyOutDir: true,
    rolldownOptions: {
      input: {
        cli: 'server/cli.ts',
        start: 'server/start.ts',
        'compute-worker': 'server/compute/worker.ts',
        'screening-worker': 'server/screening/worker.ts',
        'station-worker': 'server/screening/station-worker.ts',
      },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
  ssr: {
    // Bundled and shaken, mathjs starts in a fraction of the time it takes whole; express is loaded by `serve` only.
    noExternal: true,
    // piscina and better-sqlite3 find files of their own beside their code, pdfkit the measures of its letters.
    external: ['express', 'piscina', 'better-sqlite3', 'pino', 'pdfkit'],
  },
});
