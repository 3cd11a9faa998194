import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { OutputSettings } from '../../../server/screening/output.ts';
import { openPool } from '../../../server/screening/pool.ts';

test('threads that cannot start end the batches that wait for them, and not the process', async () => {
  const pool = openPool({} as OutputSettings, 1, fileURLToPath(new URL('no-worker.mjs', import.meta.url)));
  await expect(pool.run({ seq: 0, records: [] })).rejects.toThrow('cannot start');
  await expect(pool.run({ seq: 1, records: [] })).rejects.toThrow('cannot start');
  await pool.close();
});
