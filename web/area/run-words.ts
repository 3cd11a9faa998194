/** What is said of a screening that waits, runs or has ended. */
import type { Screening, Status, Summary } from './api.ts';

export const STATUS_WORDS: Record<Status, string> = {
  waiting: 'waits for its turn',
  running: 'running',
  done: 'done',
  cancelled: 'stopped',
  failed: 'failed',
};

/** Without grouping a long count cannot be read; the narrow space is understood in every country. */
export const countText = (count: number): string => String(Math.round(count)).replace(/\B(?=(\d{3})+$)/g, '\u202f');

/** "1 address", "12 000 addresses" */
export const counted = (count: number, one: string, many: string): string =>
  `${countText(count)}\u00a0${count === 1 ? one : many}`;

/** "40 s", "3 min", "2 h 5 min": as exact as an estimate deserves. */
export function durationText(seconds: number): string {
  if (seconds < 90) return `${Math.max(1, Math.round(seconds))}\u00a0s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 90) return `${minutes}\u00a0min`;
  return `${Math.floor(minutes / 60)}\u00a0h ${minutes % 60}\u00a0min`;
}

/** How far it is, 0 to 1; null where that is not known. */
export function shareDone({ rows, status }: Pick<Screening, 'rows' | 'status'>): number | null {
  if (status === 'done') return 1;
  if (rows.total === null || rows.total === 0) return null;
  return Math.min(1, rows.done / rows.total);
}

/** "1 200 of 50 000 rows, 3 rejected; 95 a second, 9 min to go" */
export function progressText({ rows, ratePerS, etaS, status }: Screening): string {
  const of = rows.total !== null && rows.total >= rows.done ? ` of ${countText(rows.total)}` : '';
  const parts = [`${countText(rows.done)}${of}\u00a0rows`];
  if (rows.rejected > 0) parts[0] += `, ${countText(rows.rejected)} rejected`;
  if (status === 'running' && ratePerS !== null) {
    const left = etaS === null ? '' : `, about ${durationText(etaS)} to go`;
    parts.push(`${ratePerS < 10 ? Number(ratePerS.toFixed(1)) : countText(ratePerS)} a second${left}`);
  }
  return parts.join('; ');
}

/** "23 of 40 addresses stay inside the limit on their best wall, as they are." */
export function foundWords({ addresses, insideLimit }: Summary['counts']): string {
  if (addresses === 0) return 'No address could be judged.';
  if (addresses === 1) {
    const verb = insideLimit === 1 ? 'stays' : 'does not stay';
    return `The only address ${verb} inside the limits on the best wall with nothing added.`;
  }
  const inside = insideLimit === addresses ? 'All' : insideLimit === 0 ? 'None' : countText(insideLimit);
  const verb = insideLimit === 1 ? 'stays' : 'stay';
  return `${inside} of ${counted(addresses, 'address', 'addresses')} ${verb} inside the limits on the best wall with nothing added.`;
}
