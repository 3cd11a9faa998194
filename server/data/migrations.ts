/**
 * The layouts of the database, oldest first: each step leads from the one before it. A step that was ever released is never changed;
 * a change is one more step at the end.
 */
export const MIGRATIONS: readonly string[] = [
  // What a store notes down about itself.
  'CREATE TABLE store (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT',
];
