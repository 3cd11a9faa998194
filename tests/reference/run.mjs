/** `npm run validate`: bundles the checks against the outside, runs them and writes their page. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** @param {string[]} args */
const run = (...args) => spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' }).status ?? 1;

process.exitCode =
  run('node_modules/vite/bin/vite.js', 'build', '--config', 'tests/reference/vite.config.ts') ||
  run('.build/validate/validate.js');
