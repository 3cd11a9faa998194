/** `npm run imports`: fails when an import breaks a rule, and when suspiciously few modules were seen. */
import { ROOT } from '../../server/bin/prepare.mjs';
import { cruiseImports } from './cruise.mjs';

/** A little under the present count: a check that reads no files must not pass. */
const FEWEST_MODULES = 120;

const { modules, violations } = await cruiseImports(ROOT);
for (const { rule, from, to } of violations) console.error(`${rule}: ${from} imports ${to}`);
if (modules.length < FEWEST_MODULES) {
  console.error(`Only ${modules.length} modules were seen, at least ${FEWEST_MODULES} are expected.`);
}
console.log(`${modules.length} modules, ${violations.length} forbidden imports`);
process.exitCode = violations.length > 0 || modules.length < FEWEST_MODULES ? 1 : 0;
