/**
 * Makes a fresh clone ready to run with node and npm alone: installs the packages that the lock file names and builds
 * the program, each only when needed. Says what it does on stderr and is silent when there is nothing to do.
 * Plain JavaScript without dependencies, because it runs before anything is installed.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));
export const SERVER_BUILD = join(ROOT, '.build/server');
export const WEB_BUILD = join(ROOT, '.build/web');

const LOCK = join(ROOT, 'package-lock.json');
const INSTALLED_STAMP = join(ROOT, 'node_modules/.shadeside-lock');
const BUILT_STAMP = join(ROOT, '.build/.sources');

/** What the build is made of; anything else may change without a new build. */
const SOURCES = ['model', 'server', 'web', 'climate-samples', 'package.json', 'package-lock.json', 'tsconfig.json'];

/** A failure that is explained to the person and needs no stack trace. */
export class PreparationError extends Error {}

/** Installs and builds what is missing or stale. */
export function prepare() {
  if (!isSupportedNode(process.versions.node)) {
    throw new PreparationError(
      `Shadeside needs Node 20.20 or a later 20, 22.13 or a later 22, or 24 and up; this is Node ${process.versions.node}.`,
    );
  }
  installPackages();
  build();
}

/**
 * Whether a node version is one that package.json's `engines` asks for; `npm run engines` holds the two together.
 * @param {string} version such as "20.20.2"
 */
export function isSupportedNode(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return (major === 20 && minor >= 20) || (major === 22 && minor >= 13) || major >= 24;
}

/** Notes that the build matches the sources; `npm run build` ends with it. */
export function stampBuild() {
  writeStamp(BUILT_STAMP, hashOf(SOURCES));
}

function installPackages() {
  const lockHash = hashOf(['package-lock.json']);
  if (stampIs(INSTALLED_STAMP, lockHash)) return;
  // Somebody ran npm by hand: what npm noted down tells whether that installed what the lock file names.
  if (!installedMatchesLock()) {
    timed('Installing packages', () => {
      const npm = runNpm(['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
      if (npm.status !== 0) throw new PreparationError(installFailure(npm));
    });
  }
  writeStamp(INSTALLED_STAMP, lockHash);
}

function build() {
  const sourceHash = hashOf(SOURCES);
  const built = existsSync(join(SERVER_BUILD, 'cli.js')) && existsSync(join(WEB_BUILD, 'index.html'));
  if (built && stampIs(BUILT_STAMP, sourceHash)) return;
  timed(built ? 'Building again, the sources changed' : 'Building', () => {
    const npm = runNpm(['run', 'build']);
    if (npm.status !== 0) throw new PreparationError(`${npm.stdout}${npm.stderr}\nThe build failed; see above.`);
  });
}

/** Whether every package of the lock file is installed in its version; packages of other platforms may be absent. */
function installedMatchesLock() {
  const record = join(ROOT, 'node_modules/.package-lock.json');
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  return Object.entries(JSON.parse(readFileSync(LOCK, 'utf8')).packages).every(
    ([path, wanted]) =>
      path === '' || installed[path]?.version === wanted.version || (wanted.optional && !installed[path]),
  );
}

/**
 * What to tell when npm could not install. Its own output is not passed on, since it names addresses of the
 * machine's set-up; the error code and what to try are enough, and `npm ci` shows the rest.
 * @param {{ status: number | null, stderr: string, error?: Error | undefined }} npm
 */
function installFailure({ status, stderr, error }) {
  if (error) return `npm could not be started (${error.message}); install npm, which comes with Node.`;
  const code = /^npm error code (\S+)/m.exec(stderr)?.[1] ?? `exit ${status}`;
  const network = /^(ENOTFOUND|EAI_AGAIN|ECONN|ETIMEDOUT|ENETUNREACH|E40[137])/.test(code);
  const advice = network ? 'Check the network and npm’s registry setting, then try again.' : '';
  return `Installing packages failed (${code}). ${advice} Run "npm ci" to see npm’s own words.`.replaceAll('  ', ' ');
}

/** @param {string[]} args */
function runNpm(args) {
  // Windows starts npm through a command file, which needs the shell.
  const { status, stdout, stderr, error } = spawnSync('npm', args, {
    cwd: ROOT,
    encoding: 'utf8',
    shell: process.platform === 'win32',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status, stdout: stdout ?? '', stderr: stderr ?? '', error };
}

/**
 * @param {string} what
 * @param {() => void} work
 */
function timed(what, work) {
  const start = performance.now();
  process.stderr.write(`${what} … `);
  try {
    work();
  } catch (error) {
    process.stderr.write('failed.\n');
    throw error;
  }
  process.stderr.write(`done in ${((performance.now() - start) / 1000).toFixed(1)} s.\n`);
}

/**
 * Hash over names and contents of files and folders below the root.
 * @param {string[]} paths
 */
function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths.flatMap(filesBelow)) {
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(ROOT, path)))
      .update('\0');
  }
  return hash.digest('hex');
}

/**
 * @param {string} path
 * @returns {string[]}
 */
function filesBelow(path) {
  if (!existsSync(join(ROOT, path))) return [];
  if (statSync(join(ROOT, path)).isFile()) return [path];
  return readdirSync(join(ROOT, path), { withFileTypes: true })
    .filter((entry) => !entry.name.startsWith('.'))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => filesBelow(`${path}/${entry.name}`));
}

/**
 * @param {string} file
 * @param {string} content
 */
function stampIs(file, content) {
  return existsSync(file) && readFileSync(file, 'utf8') === content;
}

/**
 * @param {string} file
 * @param {string} content
 */
function writeStamp(file, content) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, content);
}

/** Runs `prepare` for a start script; on failure says why and ends the process with code 1. */
export function prepareOrExit() {
  try {
    prepare();
  } catch (error) {
    if (!(error instanceof PreparationError)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exit(1);
  }
}

// A clone may lie behind a symbolic link: node resolves it for the module, not for the argument.
if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  if (process.argv[2] === '--built') stampBuild();
  else prepareOrExit();
}
