/** Failures of disk and database in a sentence that says what to do. */
import { BadInput } from '../bad-input.ts';

const FULL = ['ENOSPC', 'EDQUOT', 'SQLITE_FULL'];

/** Whether the disk, or the share of it that one may use, is full. */
export const isFull = (error: unknown): boolean => FULL.includes(codeOf(error));

/** Why a screening failed; the inner words of an unforeseen failure stay inside. */
export function failureSentence(error: unknown): string {
  if (error instanceof BadInput)
    return 'Files of the screening are missing or damaged; take it away and start it again.';
  if (isFull(error)) return 'The disk is full. Free some space, then go on with the screening: what was done is kept.';
  const code = codeOf(error);
  if (/^(E[A-Z]+|SQLITE_(IOERR|READONLY|CANTOPEN|CORRUPT|NOTADB).*)$/.test(code)) {
    return `The files of the screening could not be written or read (${code}). Look after the data folder, then go on with the screening.`;
  }
  return 'The program failed at this screening; its log says where.';
}

function codeOf(error: unknown): string {
  const { code } = (error ?? {}) as { code?: unknown };
  return typeof code === 'string' ? code : '';
}
