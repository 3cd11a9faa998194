/** Each rule catches an import that breaks it, and none that keeps to it. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { cruiseImports } from './cruise.mjs';

const root = mkdtempSync(join(tmpdir(), 'shadeside-imports-'));
afterAll(() => rmSync(root, { recursive: true }));

/** File, what it imports, and the rules that this breaks. */
const PLANTED: [file: string, imports: string, rules: string[]][] = [
  ['web/page.ts', '../model/index.ts', []],
  ['web/deep.ts', '../model/fields.ts', ['model-through-its-face']],
  ['server/deep.ts', '../model/solar/sun.ts', ['model-through-its-face']],
  ['server/uses-web.ts', '../web/page.ts', ['page-and-server-apart']],
  ['web/uses-server.ts', '../server/plain.ts', ['page-and-server-apart']],
  ['server/plain.ts', 'node:fs', []],
  ['model/index.ts', './siting/rank.ts', []],
  ['model/fields.ts', './climate/samples.ts', []],
  ['model/uses-web.ts', '../web/page.ts', ['model-stands-alone']],
  ['model/uses-node.ts', 'node:fs', ['model-knows-no-runtime']],
  ['model/uses-bare-node.ts', 'path', ['model-knows-no-runtime']],
  ['model/below.ts', './thermal/box.ts', ['foundations-below-physics']],
  ['model/below-siting.ts', './siting/rank.ts', ['nothing-stands-on-siting']],
  ['model/solar/sun.ts', '../fields.ts', []],
  ['model/solar/shaded.ts', '../shading/scene.ts', ['sun-stands-alone']],
  ['model/climate/samples.ts', '../plain.ts', []],
  ['model/plain.ts', './plainer.ts', []],
  ['model/plainer.ts', './missing.ts', ['nothing-unresolved']],
  ['model/climate/sunny.ts', '../solar/sun.ts', []],
  ['model/shading/scene.ts', '../solar/sun.ts', []],
  ['model/shading/hot.ts', '../thermal/box.ts', ['physics-apart']],
  ['model/thermal/box.ts', '../fields.ts', []],
  ['model/thermal/sampled.ts', '../climate/samples.ts', ['physics-apart']],
  ['model/thermal/ranked.ts', '../siting/rank.ts', ['nothing-stands-on-siting']],
  ['model/siting/rank.ts', '../thermal/box.ts', []],
  ['model/siting/by-face.ts', '../index.ts', ['face-not-from-inside']],
  ['model/siting/taught.ts', '../lesson/compare.ts', ['nothing-stands-on-lesson']],
  ['model/thermal/taught.ts', '../lesson/compare.ts', ['nothing-stands-on-lesson']],
  ['model/lesson/compare.ts', '../siting/rank.ts', []],
  // A cycle is told once, from where it is entered.
  ['model/cycle-a.ts', './cycle-b.ts', ['no-cycles']],
  ['model/cycle-b.ts', './cycle-a.ts', []],
  ['server/uses-development.ts', 'planted-development', ['no-development-packages']],
  ['server/uses-undeclared.ts', 'planted-undeclared', ['no-development-packages']],
  ['server/uses-declared.ts', 'planted-declared', []],
];

function plant(file: string, content: string): void {
  mkdirSync(dirname(join(root, file)), { recursive: true });
  writeFileSync(join(root, file), content);
}

test('every planted violation is found, and nothing else', async () => {
  plant(
    'package.json',
    JSON.stringify({
      dependencies: { 'planted-declared': '1.0.0' },
      devDependencies: { 'planted-development': '1.0.0' },
    }),
  );
  for (const name of ['planted-declared', 'planted-development', 'planted-undeclared']) {
    plant(`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', main: 'index.js' }));
    plant(`node_modules/${name}/index.js`, '');
  }
  // Imports of types alone count too: they are how a layer leaks most quietly.
  for (const [file, imports] of PLANTED)
    plant(file, `import type { Thing } from '${imports}';\nexport type It = Thing;\n`);

  const { modules, violations } = await cruiseImports(root);

  const expected = PLANTED.flatMap(([file, , rules]) => rules.map((rule) => `${rule}: ${file}`));
  expect(violations.map(({ rule, from }) => `${rule}: ${from}`).sort()).toEqual(expected.sort());
  expect(modules).toHaveLength(PLANTED.length);
});
