/** The page of figures: what was measured, as Markdown. */
import { type Check, isBand, type Measured, measure, type Topic } from './check.ts';
import { LEFT_OUT } from './left-out.ts';

export interface MeasuredTopic {
  readonly topic: Topic;
  readonly rows: readonly Measured[];
}

export const measureTopics = (topics: readonly Topic[]): MeasuredTopic[] =>
  topics.map((topic) => ({ topic, rows: topic.checks.map(measure) }));

const row = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '/')).join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');

/** Decimals that show a tenth of what is allowed, or a hundredth of a band. */
function decimalsOf(check: Check): number {
  const scale = isBand(check) ? (check.high - check.low) / 10 : check.allowed;
  return Math.min(5, Math.max(0, 1 - Math.floor(Math.log10(scale))));
}

/** A number without a sign on zero. */
function figure(x: number, decimals: number): string {
  if (Math.abs(x) >= 1e6) return x.toExponential(3).replace('e+', 'e');
  const text = x.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text} ${unit}`);

/** The published figure with as many decimals as it needs, none of them noise. */
function published(x: number): string {
  const rounded = Number(x.toPrecision(8));
  return Math.abs(rounded) >= 1e6 ? rounded.toExponential().replace('e+', 'e') : String(rounded);
}

/** What is allowed, to two figures. */
const allowance = (x: number): string => published(Number(x.toPrecision(2)));

function verdictText({ check, difference, verdict }: Measured): string {
  if (verdict !== 'outside') return verdict;
  const by = figure(Math.abs(difference), decimalsOf(check));
  return `outside, ${withUnit(by, check.unit)} ${difference < 0 ? 'below' : 'above'}`;
}

function cells(measured: Measured): string[] {
  const { check, ours, difference } = measured;
  const decimals = decimalsOf(check);
  const band = isBand(check);
  const value = band ? `${figure(check.low, decimals)} to ${figure(check.high, decimals)}` : published(check.value);
  const allowed = band ? 'the band' : allowance(check.allowed);
  return [
    check.id,
    band && check.assumed !== undefined ? `${check.what}. Assumed: ${check.assumed}` : check.what,
    check.source,
    check.status,
    withUnit(value, check.unit),
    figure(ours, decimals),
    band && difference === 0 ? '-' : figure(difference, decimals),
    `${allowed} (${check.reason})`,
    verdictText(measured),
  ];
}

const HEAD = ['id', 'case', 'source', 'status', 'value', 'ours', 'difference', 'allowed', 'verdict'];

function outsideList(rows: readonly Measured[]): string[] {
  const outside = rows.filter(({ verdict }) => verdict === 'outside');
  if (outside.length === 0) return [];
  const why = ({ check }: Measured): string => (isBand(check) && check.outside) || 'not looked into yet';
  return [
    'Outside their bands:',
    '',
    ...outside.map((measured) => `- **${measured.check.id}**: ${why(measured)}.`),
    '',
  ];
}

function section({ topic, rows }: MeasuredTopic): string {
  const own = topic.table === undefined ? [] : [topic.table(), ''];
  return [`## ${topic.title}`, '', topic.text, '', table(HEAD, rows.map(cells)), '', ...outsideList(rows), ...own].join(
    '\n',
  );
}

/** The row that uses up most of what it is allowed. */
function tightest(rows: readonly Measured[]): Measured | undefined {
  return rows
    .filter(({ check }) => !isBand(check))
    .reduce<Measured | undefined>(
      (worst, one) => (worst === undefined || one.used > worst.used ? one : worst),
      undefined,
    );
}

const count = (rows: readonly Measured[], verdict: Measured['verdict']): string =>
  String(rows.filter((one) => one.verdict === verdict).length);

/** The tightest figure of a topic against what it is allowed. */
function largestText(rows: readonly Measured[]): string {
  const worst = tightest(rows);
  if (worst === undefined || isBand(worst.check)) return '-';
  const { check, difference } = worst;
  const allowed = withUnit(allowance(check.allowed), check.unit);
  return `${check.id}: ${figure(Math.abs(difference), decimalsOf(check))} of ${allowed}`;
}

/** The band row that lies farthest outside, by the breadth of its band. */
function farthestText(rows: readonly Measured[]): string {
  const breadths = ({ check, difference }: Measured): number =>
    isBand(check) ? Math.abs(difference) / (check.high - check.low) : 0;
  const farthest = rows
    .filter(({ verdict }) => verdict === 'outside')
    .reduce<Measured | undefined>((a, b) => (a === undefined || breadths(b) > breadths(a) ? b : a), undefined);
  return farthest === undefined ? '-' : `${farthest.check.id}: ${verdictText(farthest).replace('outside, ', '')}`;
}

/** One line for each topic. */
export function summary(topics: readonly MeasuredTopic[]): string {
  const lines = topics.map(({ topic, rows }) => [
    topic.title,
    ...(['holds', 'fails', 'inside', 'outside'] as const).map((verdict) => count(rows, verdict)),
    largestText(rows),
    farthestText(rows),
  ]);
  return table(
    ['topic', 'hold', 'fail', 'inside', 'outside', 'largest difference, of what is allowed', 'farthest outside'],
    lines,
  );
}

/** The whole page. */
export function page(topics: readonly MeasuredTopic[]): string {
  const all = topics.flatMap(({ rows }) => rows);
  const bands = all.filter(({ check }) => isBand(check)).length;
  const introduction = `# The model against published figures

\`npm run validate\` computes this page anew and writes it; it ends with exit code 1 when a figure with one right answer is missed.
\`npm test\` measures the same list with the same code.

${all.length} checks: ${all.length - bands} with one right answer, ${bands} comparisons with a band. Every expected figure comes from outside: papers,
standards, worked examples of textbooks, tests of other open libraries, measurements as their abstracts give them. None was taken from
the model's own output, and nothing in the model was adjusted to meet one.

Status of a figure: **verified**, read in a source, "via" what where the document itself was not opened; **recomputed**, inputs and
formula read, the figure worked out from them; **from memory**, nobody opened the document; **common practice**, a saying of the trade
or a judgement without a source. In a band row the difference is how far outside ours lies. A published figure beside a
band tells what the band was laid round.

${summary(topics)}
`;
  const leftOut = `## Left out

Rows of the list of check values (sections: 1 climates and limits, 2 ASHRAE, 3 sun and sky, 4 convection, 5 long-wave sky, 6 surfaces, 7
people and parts, E worked balances, M measurements) that are not above:

${table(['rows', 'what', 'why'], LEFT_OUT)}
`;
  return [introduction, ...topics.map(section), leftOut].join('\n');
}

/** The ids that a page holds, in its order: the first cells of its tables of checks. */
export function idsOnPage(markdown: string): string[] {
  const ids: string[] = [];
  let inTable = false;
  for (const line of markdown.split('\n')) {
    if (line === row(HEAD)) inTable = true;
    else if (!line.startsWith('|')) inTable = false;
    else if (inTable && !line.startsWith('| ---')) ids.push(line.slice(2, line.indexOf(' | ')));
  }
  return ids;
}
