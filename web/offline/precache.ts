/** Build step: tells the service worker which files the build consists of and what to call this build. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const SERVICE_WORKER = 'service-worker.js';

/** Fills the constants of the service worker in once all files are written. */
export function precache(): Plugin {
  let outDir = '';
  return {
    name: 'shadeside-precache',
    apply: 'build',
    configResolved(config) {
      outDir = join(config.root, config.build.outDir);
    },
    closeBundle: {
      order: 'post',
      handler() {
        const files = filesBelow(outDir, '').filter((path) => path !== SERVICE_WORKER);
        const hash = createHash('sha256');
        for (const path of files)
          hash
            .update(`${path}\0`)
            .update(readFileSync(join(outDir, path)))
            .update('\0');
        const constants = [
          `const BUILD_VERSION=${JSON.stringify(hash.digest('hex').slice(0, 16))};`,
          `const BUILD_FILES=${JSON.stringify(files)};`,
        ];
        const worker = join(outDir, SERVICE_WORKER);
        const code = readFileSync(worker, 'utf8');
        // Nothing to import and nothing to export: browsers take it as a plain script.
        if (/^\s*(import|export)\b/m.test(code)) this.error('the service worker must be one plain script');
        writeFileSync(worker, `${constants.join('\n')}\n${code}`);
      },
    },
  };
}

/** Paths with slashes on every system, in a fixed order. */
function filesBelow(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      return entry.isDirectory() ? filesBelow(root, path) : [path];
    });
}
