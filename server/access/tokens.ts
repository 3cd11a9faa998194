/**
 * Tokens that open the API where it listens beyond this machine. A token is 256 random bits, shown once; kept is its SHA-256. A slow hash
 * such as scrypt guards passwords, which can be guessed; 256 random bits cannot, and a slow hash at each request would let
 * anybody keep the server busy.
 */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { Store } from '../data/store.ts';

const TOKEN_BYTES = 32;

export interface TokenRecord {
  readonly id: number;
  readonly name: string;
  readonly createdAt: string;
  readonly revokedAt: string | null;
}

export interface Tokens {
  /** Makes one and gives it back: the only time that it is told. */
  make(name: string): string;
  /** The oldest first, revoked ones among them. */
  list(): TokenRecord[];
  /** Whether there was one to revoke. */
  revoke(id: number): boolean;
  accepts(token: string): boolean;
}

export function openTokens({ db }: Pick<Store, 'db'>): Tokens {
  const insert = db.prepare<[string, Buffer, string]>(
    'INSERT INTO access_token (name, hash, created_at) VALUES (?, ?, ?)',
  );
  const all = db.prepare<[], TokenRecord>(
    'SELECT id, name, created_at AS createdAt, revoked_at AS revokedAt FROM access_token ORDER BY id',
  );
  const end = db.prepare<[string, number]>(
    'UPDATE access_token SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL',
  );
  const valid = db.prepare<[], Buffer>('SELECT hash FROM access_token WHERE revoked_at IS NULL').pluck();
  return {
    make: (name) => {
      const token = randomBytes(TOKEN_BYTES).toString('base64url');
      insert.run(name, hashOf(token), new Date().toISOString());
      return token;
    },
    list: () => all.all(),
    revoke: (id) => end.run(new Date().toISOString(), id).changes > 0,
    accepts: (token) => {
      const hash = hashOf(token);
      // All are looked at, equal or not: how long it takes says nothing about any of them.
      return valid.all().reduce((found, one) => timingSafeEqual(one, hash) || found, false);
    },
  };
}

function hashOf(token: string): Buffer {
  return createHash('sha256').update(token).digest();
}
