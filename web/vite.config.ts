import { defineConfig } from 'vite';
import { precache } from './offline/precache.ts';

/** The model is pure: what a chunk does not call, it need not load. Keeps zod off the page and the unit library out of the first load. */
const treeshake = { moduleSideEffects: (id: string) => !id.includes('/model/') };

const here = (path: string) => decodeURIComponent(new URL(path, import.meta.url).pathname);

export default defineConfig({
  root: here('.'),
  // Relative addresses, so that the page also works below a path of a proxy.
  base: './',
  plugins: [precache()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: {
    outDir: '../.build/web',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: {
      treeshake,
      input: { index: here('index.html'), 'service-worker': here('offline/service-worker.ts') },
      output: {
        // The address of a service worker must stay the same from build to build.
        entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
