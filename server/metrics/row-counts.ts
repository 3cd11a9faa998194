import type { Database } from 'better-sqlite3';

interface RowCount {
  readonly name: string;
  readonly help: string;
  count(): number;
}

const COUNTED = [
  {
    name: 'shadeside_sites',
    help: 'Sites that are kept; deleted ones are not counted.',
    tables: ['site', 'site_revision'],
    sql: `SELECT count(*) FROM site JOIN site_revision ON site_id = id AND site_revision.revision = site.revision
          WHERE draft IS NOT NULL`,
  },
  {
    name: 'shadeside_screenings',
    help: 'Screenings that are kept.',
    tables: ['screening'],
    sql: 'SELECT count(*) FROM screening',
  },
  {
    name: 'shadeside_screening_rows',
    help: 'Rows that the kept screenings went through.',
    tables: ['screening'],
    sql: "SELECT coalesce(sum(json_extract(tally, '$.rows')), 0) FROM screening",
  },
] as const;

/** How much of what is kept a database holds. */
export function rowCounts(db: Database): RowCount[] {
  const there = new Set(db.prepare<[], string>("SELECT name FROM sqlite_master WHERE type = 'table'").pluck().all());
  return COUNTED.filter(({ tables }) => tables.every((table) => there.has(table))).map(({ name, help, sql }) => {
    const statement = db.prepare<[], number>(sql).pluck();
    return { name, help, count: () => statement.get() ?? 0 };
  });
}
