/** Failures of a screening in a sentence that says what to do. */
import { BadInput } from '../bad-input.ts';
import { codeOf, fileFailure, isFull } from '../file-failure.ts';

/** Why a screening failed; the inner words of an unforeseen failure, and paths, stay inside. */
export function failureSentence(error: unknown): string {
  if (error instanceof BadInput)
    return 'Files of the screening are missing or damaged; take it away and start it again.';
  if (isFull(error)) return 'The disk is full. Free some space, then go on with the screening: what was done is kept.';
  if (fileFailure(error) !== undefined) {
    return `The files of the screening could not be written or read (${codeOf(error)}). Look after the data folder, then go on with the screening.`;
  }
  return 'The program failed at this screening; its log says where.';
}
