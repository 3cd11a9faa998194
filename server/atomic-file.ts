/** Files that are there whole or not at all. */
import { randomUUID } from 'node:crypto';
import { closeSync, constants, copyFileSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { BadInput } from './bad-input.ts';
import { codeOf, isFull } from './file-failure.ts';

/**
 * Writes a file beside its place and moves it there: whoever looks finds the old one or the new one, never a part.
 * @throws BadInput where it cannot be written; the error of the system where the disk is full
 */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const part = partOf(path);
  try {
    const file = await open(part, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw notWritten(path, error);
  }
}

/** What to throw for a file that was not written: a wrong place is bad input, a full disk is nobody's. */
export function notWritten(path: string, error: unknown, what = 'cannot be written'): unknown {
  if (isFull(error)) return Object.assign(new Error(`${path}: the disk is full`), { code: codeOf(error), path });
  return new BadInput([`${path}: ${what} (${codeOf(error) || error})`]);
}

/**
 * Moves a file that is safe on its disk to its place, on another file system, too: whoever looks finds the old one or the new one.
 * May be repeated after a crash.
 */
export function moveWhole(from: string, to: string): void {
  try {
    renameSync(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error;
    copyWhole(from, to);
    rmSync(from);
  }
}

function copyWhole(from: string, to: string): void {
  const part = partOf(to);
  try {
    copyFileSync(from, part, constants.COPYFILE_EXCL);
    const file = openSync(part, 'r+');
    try {
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(part, to);
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

/** A name beside a file's own that nothing else has. */
const partOf = (path: string): string => `${path}.${randomUUID()}.part`;
