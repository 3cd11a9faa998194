/**
 * Names each failure on a line and prints "N passed, N failed" from vitest's JSON report; a test file that did not even
 * load counts as one failure.
 */
import { existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { stripVTControlCharacters } from 'node:util';

const [file = ''] = process.argv.slice(2);
const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
const unloaded = (report?.testResults ?? []).filter(
  ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
);
for (const { name, message, assertionResults } of report?.testResults ?? []) {
  const tests = assertionResults.filter((test) => test.status === 'failed');
  for (const { fullName, failureMessages } of tests) tell(name, fullName, failureMessages.join(' '));
  if (unloaded.some((file) => file.name === name)) tell(name, 'did not load', message);
}
const passed = report?.numPassedTests ?? 0;
const failed = report ? report.numFailedTests + unloaded.length : 1;
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;

/**
 * @param {string} file
 * @param {string} test
 * @param {string} message
 */
function tell(file, test, message) {
  const why = stripVTControlCharacters(message).replace(/\s+/g, ' ');
  console.log(`FAILED ${relative(process.cwd(), file)}: ${test}: ${why}`.slice(0, 400));
}
