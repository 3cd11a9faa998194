/** Preparing a clone, with a stand-in for npm that notes down what it was asked to do. */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isSupportedNode, ROOT } from '../../server/bin/prepare.mjs';

let clone: string;

beforeEach(() => {
  clone = mkdtempSync(join(tmpdir(), 'shadeside-clone-'));
  cpSync(join(ROOT, 'server/bin'), join(clone, 'server/bin'), { recursive: true });
  write('package.json', '{ "type": "module" }');
  write('package-lock.json', lockFile('1.0.0'));
  write('model/sun.ts', 'export {};');
  write('model/solar/angle.ts', 'export {};');
  write('bin/npm', NPM, 0o755);
});

afterEach(() => rmSync(clone, { recursive: true }));

/** Does what npm would do, as far as preparing looks at it. */
const NPM = `#!/bin/sh
echo "$*" >> asked
if [ -e fails ]; then
  echo "npm error code ENOTFOUND" >&2
  echo "npm error request to https://packages.example.net/thing failed" >&2
  exit 1
fi
if [ "$1" = ci ]; then
  mkdir -p node_modules && cp package-lock.json node_modules/.package-lock.json
else
  mkdir -p .build/server .build/web && touch .build/server/cli.js .build/web/index.html
  node server/bin/prepare.mjs --built
fi
`;

function lockFile(version: string): string {
  const packages = {
    '': { name: 'shadeside' },
    'node_modules/thing': { version },
    'node_modules/of-another-platform': { version: '1.0.0', optional: true },
  };
  return JSON.stringify({ packages });
}

function write(path: string, content: string, mode = 0o644): void {
  mkdirSync(dirname(join(clone, path)), { recursive: true });
  writeFileSync(join(clone, path), content, { mode });
}

/** Prepares the clone; gives back what npm was asked for and what was said. */
function prepare() {
  rmSync(join(clone, 'asked'), { force: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, ['server/bin/prepare.mjs'], {
    cwd: clone,
    env: { ...process.env, PATH: `${join(clone, 'bin')}:${process.env['PATH']}` },
    encoding: 'utf8',
  });
  const asked = existsSync(join(clone, 'asked')) ? readFileSync(join(clone, 'asked'), 'utf8').trim().split('\n') : [];
  return { asked: asked.map((line) => line.split(' --')[0]), status, stdout, stderr };
}

// The npm that stands in for the real one is a shell script.
describe.skipIf(process.platform === 'win32')('a clone', () => {
  test('is installed and built once, and then left alone in silence', () => {
    const first = prepare();
    expect(first.asked).toEqual(['ci', 'run build']);
    expect(first.stderr).toMatch(/^Installing packages … done in \d+\.\d s\.\nBuilding … done in \d+\.\d s\.\n$/);
    expect(prepare()).toEqual({ asked: [], status: 0, stdout: '', stderr: '' });
  });

  test('is built again when a source changed, appeared or went', () => {
    prepare();
    write('model/solar/angle.ts', 'export const changed = 1;');
    expect(prepare().asked).toEqual(['run build']);
    write('web/page.ts', '');
    expect(prepare().asked).toEqual(['run build']);
    rmSync(join(clone, 'web/page.ts'));
    expect(prepare().stderr).toMatch(/^Building again, the sources changed … done/);
    write('README.md', 'changed');
    expect(prepare().asked).toEqual([]);
  });

  test('is installed again when the lock file changed', () => {
    prepare();
    write('package-lock.json', lockFile('1.0.1'));
    expect(prepare().asked).toEqual(['ci', 'run build']);
  });

  test('that somebody installed by hand is not installed again', () => {
    write('node_modules/.package-lock.json', lockFile('1.0.0'));
    expect(prepare().asked).toEqual(['run build']);
  });

  test('that cannot be installed says why, without an address', () => {
    write('fails', '');
    const { status, stdout, stderr } = prepare();
    expect(stderr).toContain('Installing packages failed (ENOTFOUND). Check the network');
    expect(stderr).not.toContain('example.net');
    expect(stdout).toBe('');
    expect(status).toBe(1);
  });

  test('that cannot be built shows the words of the build', () => {
    prepare();
    write('fails', '');
    write('model/sun.ts', 'changed');
    const { status, stderr } = prepare();
    expect(stderr).toContain('The build failed; see above.');
    expect(status).toBe(1);
  });
});

test('node versions are taken by number', () => {
  const supported = ['20.20.0', '20.20.2', '22.13.0', '24.1.0'];
  const refused = ['18.20.8', '20.9.0', '20.19.6', '21.7.3', '9.0.0'];
  expect(supported.filter(isSupportedNode)).toEqual(supported);
  expect(refused.filter(isSupportedNode)).toEqual([]);
});
