/** What a screening found, as a table for the terminal. */
import { KIT_CLASSES } from '../../model/index.ts';
import type { ScreeningProgress, ScreeningSummary } from '../screening/screening.ts';
import { MARGIN_STEP_K, type Tally } from '../screening/tally.ts';
import { table } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';

/** `assumptions` are what the figures rest on. */
export function screeningText(
  { tally, out, rejects, seconds, resumedAt }: ScreeningSummary,
  assumptions: readonly string[],
): string {
  if (tally.rows === 0) return `No rows: ${out} holds its header only.`;
  const parts = [
    `${count(tally.screened, 'address', 'addresses')} screened in ${duration(seconds)}${resumedAt > 0 ? `, ${resumedAt} rows of them before` : ''}; results in ${out}`,
  ];
  if (tally.screened > 0) parts.push('', kits(tally), '', margins(tally), '', climates(tally));
  if (tally.blank > 0) parts.push('', `${count(tally.blank, 'blank row', 'blank rows')} passed over.`);
  parts.push('', rejected(tally, rejects));
  for (const line of assumptions) parts.push('', wrap(line));
  return parts.join('\n');
}

function kits({ kits: counts, screened }: Tally): string {
  const rows = KIT_CLASSES.map(({ name, text }) => ({ name, text, count: counts[name] ?? 0 }));
  return table(rows, [
    { head: 'kit', text: ({ name }) => name, align: 'left' },
    { head: 'addresses', text: ({ count: n }) => String(n) },
    { head: 'share', text: ({ count: n }) => percent(n, screened) },
    { head: 'what it means', text: ({ text }) => text, align: 'left', wraps: true },
  ]);
}

function margins({ margins: counts, screened }: Tally): string {
  const rows = Object.entries(counts)
    .map(([low, n]) => ({ low: Number(low), n }))
    .sort((a, b) => a.low - b.low);
  return table(rows, [
    { head: 'margin of the best wall', text: ({ low }) => stepText(low), align: 'left' },
    { head: 'addresses', text: ({ n }) => String(n) },
    { head: 'share', text: ({ n }) => percent(n, screened) },
  ]);
}

/** A step of margins in either unit: a table of addresses may cross a border. */
function stepText(low: number): string {
  const high = low + MARGIN_STEP_K;
  return `${low} to ${high} K (${1.8 * low} to ${1.8 * high} °F)`;
}

function climates({ climates: counts, screened }: Tally): string {
  const rows = Object.entries(counts).sort(([, a], [, b]) => b - a);
  return table(rows, [
    { head: 'design climate from', text: ([source]) => source, align: 'left' },
    { head: 'addresses', text: ([, n]) => String(n) },
    { head: 'share', text: ([, n]) => percent(n, screened) },
  ]);
}

const SHOWN_REASONS = 8;

function rejected({ rejected: rows, reasons }: Tally, path: string): string {
  if (rows === 0) return 'No row was rejected.';
  const lines = Object.entries(reasons)
    .sort(([, a], [, b]) => b - a)
    .slice(0, SHOWN_REASONS)
    .map(([reason, n]) => wrap(reason, `${String(n).padStart(8)}  `));
  return [`${count(rows, 'row', 'rows')} rejected, row by row in ${path}; most often:`, ...lines].join('\n');
}

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** What stands beside the bar: rows, rate, time left. */
export function progressTail({ tally, rows, rowsPerS, leftS }: ScreeningProgress): string {
  const parts = [`${tally.rows} of ${rows} rows`];
  if (rowsPerS !== null) parts.push(`${rowsPerS < 10 ? rowsPerS.toFixed(1) : Math.round(rowsPerS)} rows/s`);
  if (leftS !== null) parts.push(`${duration(leftS)} left`);
  return parts.join(', ');
}

/** A length of time in its two greatest units. */
export function duration(seconds: number): string {
  if (seconds < 10) return `${seconds.toFixed(1)} s`;
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.floor(whole / 60)} min ${whole % 60} s`;
  return `${Math.floor(whole / 3600)} h ${Math.floor((whole % 3600) / 60)} min`;
}
