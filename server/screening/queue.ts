/**
 * The queue between those who read rows, those who work on them and the one who writes. It holds what must survive a crash, so that
 * another carrier (a database server that several machines share) can stand behind the same calls.
 */
import type { Batch, Outcome } from './batch.ts';

/** How far the writing has come, as it was last made safe; `State` is the writer's own. */
export interface Checkpoint<State> {
  /** Batches written: those before this number. */
  readonly seq: number;
  readonly state: State;
}

export interface BatchQueue<State> {
  /** The checkpoint that was stored last; null for a queue that has none. */
  readonly checkpoint: Checkpoint<State> | null;
  /** Batches that were pushed, now and before a crash. */
  readonly pushed: number;
  /** Adds the next batch, once there is room; null after the last one. */
  push(batch: Batch | null): Promise<void>;
  /** The next batch that nobody works on; null when there will be none. */
  take(): Promise<Batch | null>;
  /** Hands in what came of a batch. */
  done(outcome: Outcome): Promise<void>;
  /** The outcomes in the order of their batches; null after the last one. */
  collect(): Promise<Outcome | null>;
  /** Forgets the outcomes before the checkpoint and stores it, both or neither. */
  commit(checkpoint: Checkpoint<State>): void;
  /** Ends it; everyone who waits gets null. What is stored stays. */
  close(): void;
}
