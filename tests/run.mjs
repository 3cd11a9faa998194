/**
 * `npm test`: installs and builds when needed, makes sure that there is a Chromium, and runs every test once.
 * Arguments go on to vitest: `npm test -- tests/server`.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { prepareOrExit, ROOT } from '../server/bin/prepare.mjs';
import { findChromium } from './browser/find-chromium.mjs';

const BROWSER_MISSING = `The browser tests need Chromium, and none was found.
  Debian:          sudo apt-get install -y chromium-headless-shell
  Ubuntu:          sudo apt-get install -y chromium
  Fedora:          sudo dnf install -y chromium
  macOS:           brew install --cask chromium
Or set CHROMIUM_PATH to the executable of a Chromium or Chrome. Without one, the other tests run with
  npm test -- --project unit`;

prepareOrExit();
const args = process.argv.slice(2);
if (needsBrowser(args)) process.env['CHROMIUM_PATH'] = chromiumOrExit();
const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
const { status } = spawnSync(process.execPath, [vitest, 'run', '--config', 'tests/vitest.config.ts', ...args], {
  cwd: ROOT,
  stdio: 'inherit',
});
process.exitCode = status ?? 1;

/** @param {string[]} args */
function needsBrowser(args) {
  if (args.some((arg, index) => arg === '--project=unit' || (arg === 'unit' && args[index - 1] === '--project'))) {
    return false;
  }
  const parts = args.filter((arg) => arg.startsWith('tests/'));
  return parts.length === 0 || parts.some((part) => part.startsWith('tests/browser'));
}

/** The path of a Chromium; installs one where that is one plain step, and ends the process where it is not. */
function chromiumOrExit() {
  const path = findChromium() ?? (mayUseApt() ? installWithApt() : undefined);
  if (path !== undefined) return path;
  process.stderr.write(`${BROWSER_MISSING}\n`);
  process.exit(1);
}

function mayUseApt() {
  if (process.env['CHROMIUM_PATH'] || process.getuid?.() !== 0 || !existsSync('/etc/os-release')) return false;
  return /^ID(_LIKE)?=.*(debian|ubuntu)/m.test(readFileSync('/etc/os-release', 'utf8'));
}

function installWithApt() {
  process.stderr.write('No Chromium found for the browser tests; installing it with apt-get … ');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  /** @param {string[]} step */
  const did = (...step) => spawnSync('apt-get', ['-qq', ...step], { env, stdio: 'ignore' }).status === 0;
  // The first is the same without windows: smaller, and lighter to run. Ubuntu has none of it.
  const done = did('update') && (did('install', '-y', 'chromium-headless-shell') || did('install', '-y', 'chromium'));
  process.stderr.write(done ? 'done.\n' : 'failed.\n');
  return findChromium();
}
