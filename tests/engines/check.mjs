/** `npm run engines`: fails when an installed package refuses one of the Nodes that Shadeside promises to run on. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import semver from 'semver';
import { isSupportedNode, ROOT } from '../../server/bin/prepare.mjs';

/** The oldest of each line of versions that is promised. */
const PROMISED = ['20.20.0', '22.13.0', '24.0.0'];

/** A little under the present count: a check that reads nothing must not pass. */
const FEWEST_PACKAGES = 190;

/** Versions at the edges of what package.json promises. */
const EDGES = ['18.20.0', '20.19.5', '20.20.0', '20.99.0', '21.7.0', '22.0.0', '22.13.0', '23.1.0', '24.0.0', '25.0.0'];

const own = readJson('package.json').engines.node;
const installed = Object.keys(readJson('node_modules/.package-lock.json').packages);
const complaints = [
  ...installed.flatMap((path) => {
    const range = readJson(join(path, 'package.json')).engines?.node;
    if (typeof range !== 'string') return [];
    const refused = PROMISED.filter((version) => !semver.satisfies(version, range));
    return refused.length > 0 ? [`${path} needs node ${range}, not ${refused.join(', ')}`] : [];
  }),
  ...EDGES.filter((version) => isSupportedNode(version) !== semver.satisfies(version, own)).map(
    (version) => `server/bin/prepare.mjs and package.json disagree about node ${version}`,
  ),
];
if (installed.length < FEWEST_PACKAGES) {
  complaints.push(`only ${installed.length} packages were seen, at least ${FEWEST_PACKAGES} are expected`);
}
for (const complaint of complaints) console.error(complaint);
console.log(`${installed.length} packages, ${complaints.length} refuse node ${PROMISED.join(', ')}`);
process.exitCode = complaints.length > 0 ? 1 : 0;

/** @param {string} path */
function readJson(path) {
  return JSON.parse(readFileSync(join(ROOT, path), 'utf8'));
}
