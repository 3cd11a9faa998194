/**
 * The layouts of the database, oldest first: each step leads from the one before it. A step that was ever released is never changed;
 * a change is one more step at the end.
 */
export const MIGRATIONS: readonly string[] = [
  // What a store notes down about itself.
  'CREATE TABLE store (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT',
  // Sites with all their revisions. A revision without a draft says that the site was deleted; `seq` orders all changes of the store.
  `CREATE TABLE site (
     id TEXT PRIMARY KEY,
     revision INTEGER NOT NULL
   ) STRICT, WITHOUT ROWID;
   CREATE TABLE site_revision (
     seq INTEGER PRIMARY KEY AUTOINCREMENT,
     site_id TEXT NOT NULL REFERENCES site (id),
     revision INTEGER NOT NULL,
     title TEXT NOT NULL,
     changed_at TEXT NOT NULL,
     draft TEXT,
     UNIQUE (site_id, revision)
   ) STRICT`,
  // Screenings; `job` is what each is made of, `tally` what it counted, both JSON.
  `CREATE TABLE screening (
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     origin TEXT NOT NULL,
     status TEXT NOT NULL,
     error TEXT,
     created_at TEXT NOT NULL,
     started_at TEXT,
     ended_at TEXT,
     total INTEGER NOT NULL,
     tally TEXT NOT NULL,
     job TEXT NOT NULL
   ) STRICT`,
  // Tokens of those who may use the API from elsewhere: what is kept is the SHA-256 of each.
  `CREATE TABLE access_token (
     id INTEGER PRIMARY KEY,
     name TEXT NOT NULL,
     hash BLOB NOT NULL UNIQUE,
     created_at TEXT NOT NULL,
     revoked_at TEXT
   ) STRICT`,
];
