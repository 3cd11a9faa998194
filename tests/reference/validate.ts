/** Measures every check, prints the summary and what is missed, and writes the page. Bundled and run by `run.mjs`. */
import { writeFileSync } from 'node:fs';
import { isBand } from './check.ts';
import { TOPICS } from './checks/index.ts';
import { measureTopics, page, summary } from './page.ts';

const PAGE = 'tests/reference/VALIDATION.md';

const topics = measureTopics(TOPICS);
writeFileSync(PAGE, page(topics));
console.log(summary(topics));

const rows = topics.flatMap((topic) => topic.rows);
const failed = rows.filter(({ verdict }) => verdict === 'fails');
for (const { check, ours } of failed) console.log(`FAILS: ${check.id}: ${ours} ${check.unit}, ${check.what}`);
for (const { check, ours, verdict } of rows) {
  if (!isBand(check) || verdict === 'fails' || (verdict === 'outside') === (check.outside !== undefined)) continue;
  console.log(
    `${check.id} is now ${verdict} its band, ours ${ours} ${check.unit}; its list of reasons says otherwise.`,
  );
}
console.log(`\n${rows.length} checks, ${failed.length} failed; the figures are in ${PAGE}`);
if (failed.length > 0) process.exitCode = 1;
