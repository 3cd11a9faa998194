/**
 * `npm run audit`: asks npm's registry for known weaknesses of the packages that the program ships with. Fails on a high or critical
 * one. Without a network, or with a registry that cannot answer this, it says so and fails nothing.
 */
import { spawnSync } from 'node:child_process';
import { ROOT } from '../../server/bin/prepare.mjs';
import { verdictOf } from './verdict.mjs';

const PATIENCE_MS = 60_000;

const { stdout } = spawnSync(
  'npm',
  ['audit', '--omit=dev', '--json', '--fetch-retries=0', '--fetch-timeout=30000', '--loglevel=silent'],
  {
    cwd: ROOT,
    encoding: 'utf8',
    timeout: PATIENCE_MS,
    shell: process.platform === 'win32',
    maxBuffer: 64 * 1024 * 1024,
  },
);
const { lines, failed } = verdictOf(stdout ?? '');
for (const line of lines) console.log(line);
process.exitCode = failed ? 1 : 0;
