/** `npm run load`: builds the program and the load, and runs it; arguments go on. */
import { spawn } from 'node:child_process';
import { prepareOrExit, ROOT } from '../../server/bin/prepare.mjs';

/** Runs a step to its end; a signal that would end this process goes on to it, or it would be left alone.
 * @param {string[]} args
 * @returns {Promise<number>}
 */
const run = (...args) =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
    /** @param {NodeJS.Signals} signal */
    const pass = (signal) => child.kill(signal);
    for (const signal of SIGNALS) process.on(signal, pass);
    child.on('close', (code) => {
      for (const signal of SIGNALS) process.off(signal, pass);
      resolve(code ?? 1);
    });
  });

/** @type {NodeJS.Signals[]} */
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];

prepareOrExit();
process.exitCode =
  (await run('node_modules/vite/bin/vite.js', 'build', '--config', 'tests/load/vite.config.ts')) ||
  (await run('.build/load/load.js', ...process.argv.slice(2)));
