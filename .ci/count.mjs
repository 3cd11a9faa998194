/** Prints "N passed, N failed" from vitest's JSON report; a test file that did not even load counts as one failure. */
import { existsSync, readFileSync } from 'node:fs';

const [file = ''] = process.argv.slice(2);
const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
const unloaded = (report?.testResults ?? []).filter(
  ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
).length;
const passed = report?.numPassedTests ?? 0;
const failed = report ? report.numFailedTests + unloaded : 1;
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
