/** Files that are there whole or not at all. */
import { randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { BadInput } from './bad-input.ts';

/**
 * Writes a file beside its place and moves it there: whoever looks finds the old one or the new one, never a part.
 * @throws BadInput where it cannot be written
 */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const part = `${path}.${randomUUID()}.part`;
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
    throw new BadInput([`${path}: cannot be written (${(error as NodeJS.ErrnoException).code ?? error})`]);
  }
}
