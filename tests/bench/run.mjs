/** `npm run bench`: bundles the benches and runs them. */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** @param {string[]} args */
const run = (...args) => execFileSync(process.execPath, args, { cwd: root, stdio: 'inherit' });

console.error('Bundling the benches.');
run('node_modules/vite/bin/vite.js', 'build', '--config', 'tests/bench/vite.config.ts');
console.error('Running them; this takes half a minute. Compare figures within one run only.');
run('.build/bench/wall-day.js');
console.error('Screening tables; this takes a minute or two.');
run('server/bin/shadeside.mjs', '--version');
run('tests/bench/screening.mjs');
