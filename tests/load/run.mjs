/** `npm run load`: builds the program and the load, and runs it; arguments go on. */
import { spawnSync } from 'node:child_process';
import { prepareOrExit, ROOT } from '../../server/bin/prepare.mjs';

/** @param {string[]} args */
const run = (...args) => spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' }).status ?? 1;

prepareOrExit();
process.exitCode =
  run('node_modules/vite/bin/vite.js', 'build', '--config', 'tests/load/vite.config.ts') ||
  run('.build/load/load.js', ...process.argv.slice(2));
