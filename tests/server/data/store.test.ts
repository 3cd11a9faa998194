import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../../server/data/migrations.ts';
import { DATABASE_FILE, openStore, StoreError } from '../../../server/data/store.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-store-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a store', () => {
  it('makes its folder and keeps its own name from one opening to the next', () => {
    const first = openStore(join(folder, 'deep', 'inside'));
    first.close();
    const second = openStore(join(folder, 'deep', 'inside'));
    second.close();
    const other = openStore(join(folder, 'other'));
    other.close();
    expect(first.id).toMatch(/^[0-9a-f-]{36}$/);
    expect(second.id).toBe(first.id);
    expect(other.id).not.toBe(first.id);
  });

  it('refuses a database of a newer program and leaves it as it was', () => {
    openStore(folder).close();
    const db = new Database(join(folder, DATABASE_FILE));
    db.pragma(`user_version = ${MIGRATIONS.length + 1}`);
    db.close();
    const before = readFileSync(join(folder, DATABASE_FILE));
    expect(() => openStore(folder)).toThrow(StoreError);
    expect(() => openStore(folder)).toThrow(/newer Shadeside/);
    expect(readFileSync(join(folder, DATABASE_FILE)).equals(before)).toBe(true);
  });

  it('says which folder cannot be used', () => {
    writeFileSync(join(folder, 'a-file'), '');
    expect(() => openStore(join(folder, 'a-file'))).toThrow(/a-file cannot be used .*--data DIR/);
  });
});
