/** One process of those that share a data folder works on its screenings; the others look on. */
import Database from 'better-sqlite3';

/**
 * Takes hold of a folder's screenings by a lock on a file, which the system lets go of when the process ends, however it ends.
 * Gives back null where another has them.
 */
export function takeHold(path: string): { release(): void } | null {
  const db = new Database(path, { timeout: 0 });
  try {
    db.exec('BEGIN EXCLUSIVE');
    return { release: () => db.close() };
  } catch (error) {
    db.close();
    if ((error as { code?: string }).code?.startsWith('SQLITE_BUSY')) return null;
    throw error;
  }
}
