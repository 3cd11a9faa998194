/** The queue in a file of SQLite, for one process and its worker threads. */
import Database from 'better-sqlite3';
import type { Batch, Outcome } from './batch.ts';
import type { BatchQueue, Checkpoint } from './queue.ts';

/** The version of what is stored. */
const LAYOUT = 1;

const SCHEMA = `
  CREATE TABLE IF NOT EXISTS run (key TEXT PRIMARY KEY, value TEXT NOT NULL);
  CREATE TABLE IF NOT EXISTS batch (
    seq INTEGER PRIMARY KEY,
    records TEXT NOT NULL,
    taken INTEGER NOT NULL DEFAULT 0,
    outcome TEXT
  );
  PRAGMA user_version = ${LAYOUT};
`;

/** Thrown when another process has the queue. */
export class QueueInUse extends Error {
  override readonly name = 'QueueInUse';
}

export interface QueueOptions {
  /** Batches that wait or are worked on; more are not let in. */
  readonly room: number;
}

/**
 * Opens a queue, or makes one.
 * @throws QueueInUse
 */
export function openSqliteQueue<State>(path: string, { room }: QueueOptions) {
  const db = opened(path);
  const statement = {
    read: db.prepare<[string], { value: string }>('SELECT value FROM run WHERE key = ?'),
    write: db.prepare('INSERT INTO run VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value'),
    push: db.prepare('INSERT INTO batch (seq, records) VALUES (?, ?)'),
    next: db.prepare<[], { seq: number; records: string }>(
      'UPDATE batch SET taken = 1 WHERE seq = (SELECT min(seq) FROM batch WHERE taken = 0) RETURNING seq, records',
    ),
    done: db.prepare("UPDATE batch SET outcome = ?, records = '' WHERE seq = ?"),
    outcome: db.prepare<[number], { outcome: string | null }>('SELECT outcome FROM batch WHERE seq = ?'),
    forget: db.prepare('DELETE FROM batch WHERE seq < ?'),
    last: db.prepare<[], { seq: number | null }>('SELECT max(seq) AS seq FROM batch'),
  };
  const readJson = <Value>(key: string): Value | null => {
    const row = statement.read.get(key);
    return row === undefined ? null : (JSON.parse(row.value) as Value);
  };
  // What was taken by a process that is no more is free again.
  db.exec('UPDATE batch SET taken = 0 WHERE outcome IS NULL');

  let checkpoint = readJson<Checkpoint<State>>('checkpoint');
  let pushed = Math.max(checkpoint?.seq ?? 0, (statement.last.get()?.seq ?? -1) + 1);
  let collected = checkpoint?.seq ?? 0;
  let ended = false;
  let closed = false;
  const changed = signal();

  /** Asks again at every change until there is an answer. */
  async function until<Answer>(ask: () => Answer | undefined): Promise<Answer | null> {
    while (!closed) {
      const change = changed.next();
      const answer = ask();
      if (answer !== undefined) return answer;
      await change;
    }
    return null;
  }

  const commit = db.transaction((stored: Checkpoint<State>) => {
    statement.forget.run(stored.seq);
    statement.write.run('checkpoint', JSON.stringify(stored));
  });

  const queue: BatchQueue<State> = {
    get checkpoint() {
      return checkpoint;
    },
    get pushed() {
      return pushed;
    },
    async push(batch) {
      if (batch === null) {
        ended = true;
        changed.wake();
        return;
      }
      await until(() => (pushed - collected < room ? true : undefined));
      if (closed) return;
      statement.push.run(batch.seq, JSON.stringify(batch.records));
      pushed = batch.seq + 1;
      changed.wake();
    },
    take: () =>
      until<Batch | null>(() => {
        const row = statement.next.get();
        if (row !== undefined) return { seq: row.seq, records: JSON.parse(row.records) as Batch['records'] };
        return ended ? null : undefined;
      }),
    async done(outcome) {
      if (closed) return;
      statement.done.run(JSON.stringify(outcome), outcome.seq);
      changed.wake();
    },
    collect: () =>
      until<Outcome | null>(() => {
        const outcome = statement.outcome.get(collected)?.outcome;
        if (outcome) {
          collected += 1;
          changed.wake();
          return JSON.parse(outcome) as Outcome;
        }
        return ended && collected === pushed ? null : undefined;
      }),
    commit(stored) {
      commit(stored);
      checkpoint = stored;
    },
    close() {
      if (closed) return;
      closed = true;
      changed.wake();
      db.close();
    },
  };
  return {
    ...{ queue },
    /** What a run notes down about itself. */
    note: <Value>(key: string): Value | null => readJson<Value>(key),
    writeNote: (key: string, value: unknown) => void statement.write.run(key, JSON.stringify(value)),
  };
}

function opened(path: string): Database.Database {
  const db = new Database(path, { timeout: 200 });
  try {
    // One process holds the file as long as it runs; a killed one lets go of it.
    db.pragma('locking_mode = EXCLUSIVE');
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = NORMAL');
    db.exec(SCHEMA);
    return db;
  } catch (error) {
    db.close();
    if ((error as { code?: string }).code?.startsWith('SQLITE_BUSY')) throw new QueueInUse();
    throw error;
  }
}

/** Lets many wait for the next change of something. */
function signal() {
  let wake = () => {};
  let waiting: Promise<void> | null = null;
  return {
    next(): Promise<void> {
      waiting ??= new Promise((resolve) => {
        wake = resolve;
      });
      return waiting;
    },
    wake(): void {
      waiting = null;
      wake();
    },
  };
}
