/** `npm run engines`: fails when an installed package refuses the oldest Node that Shadeside promises to run on. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import semver from 'semver';
import { isSupportedNode, ROOT } from '../../server/bin/prepare.mjs';

const OLDEST_NODE = '20.20.0';

/** A little under the present count: a check that reads nothing must not pass. */
const FEWEST_PACKAGES = 190;

/** Versions at the edges of what package.json promises. */
const EDGES = ['18.20.0', '20.19.5', '20.20.0', '20.99.0', '21.7.0', '22.0.0', '24.1.0'];

const own = readJson('package.json').engines.node;
const installed = Object.keys(readJson('node_modules/.package-lock.json').packages);
const complaints = [
  ...installed.flatMap((path) => {
    const range = readJson(join(path, 'package.json')).engines?.node;
    const refuses = typeof range === 'string' && !semver.satisfies(OLDEST_NODE, range);
    return refuses ? [`${path} needs node ${range}`] : [];
  }),
  ...EDGES.filter((version) => isSupportedNode(version) !== semver.satisfies(version, own)).map(
    (version) => `server/bin/prepare.mjs and package.json disagree about node ${version}`,
  ),
];
if (installed.length < FEWEST_PACKAGES) {
  complaints.push(`only ${installed.length} packages were seen, at least ${FEWEST_PACKAGES} are expected`);
}
for (const complaint of complaints) console.error(complaint);
console.log(`${installed.length} packages, ${complaints.length} refuse node ${OLDEST_NODE}`);
process.exitCode = complaints.length > 0 ? 1 : 0;

/** @param {string} path */
function readJson(path) {
  return JSON.parse(readFileSync(join(ROOT, path), 'utf8'));
}
