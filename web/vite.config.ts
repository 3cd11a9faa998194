import { defineConfig } from 'vite';

/** The model is pure: what a chunk does not call, it need not load. Keeps zod off the page and the unit library out of the first load. */
const treeshake = { moduleSideEffects: (id: string) => !id.includes('/model/') };

export default defineConfig({
  root: decodeURIComponent(new URL('.', import.meta.url).pathname),
  // Relative addresses, so that the page also works below a path of a proxy.
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: {
    outDir: '../.build/web',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: { treeshake },
  },
});
