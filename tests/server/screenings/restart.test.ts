/** A server that is killed and stopped while it screens, as a process. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { ScreeningState } from '../../../server/screenings/screening-state.ts';
import { spawnBuilt } from '../run-built.ts';
import { manyRows, ownFolder, screened } from '../screening/tables.ts';

const folder = ownFolder();
const data = join(folder, 'data');

async function serve() {
  const child = spawnBuilt(['serve', '--port', '0', '--data', data]);
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (chunk: Buffer) => {
      const found = /http:\/\/\S+\//.exec(chunk.toString())?.[0];
      if (found) resolve(found);
    });
    ended.then((code) => reject(new Error(`ended with code ${code}`)));
  });
  const get = async (path: string): Promise<Response> => fetch(`${url}api/${path}`);
  const post = async (path: string, type: string, body: string) => {
    const response = await fetch(`${url}api/${path}`, { method: 'POST', headers: { 'Content-Type': type }, body });
    return response.json();
  };
  const end = (signal: NodeJS.Signals) => {
    child.kill(signal);
    return ended;
  };
  /** Waits until a screening has come to some point. */
  const until = async (id: string, there: (state: ScreeningState) => boolean): Promise<ScreeningState> => {
    for (;;) {
      const state = (await (await get(`screenings/${id}`)).json()) as ScreeningState;
      if (there(state)) return state;
      if (state.endedAt !== null) throw new Error(`ended too early: ${JSON.stringify(state)}`);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  };
  return { get, post, end, until };
}

test('killed, stopped and started again, it goes on by itself and ends byte by byte the same', async () => {
  const table = manyRows(112, 20);
  const reference = screened(folder, table);
  const first = await serve();
  const { table: uploaded } = await first.post('tables?name=sites.csv', 'text/csv', table);
  const { id } = await first.post('screenings', 'application/json', JSON.stringify({ table: uploaded, workers: 1 }));
  await first.until(id, ({ rows }) => rows.done > 0);
  await first.end('SIGKILL');

  const second = await serve();
  const resumed = await second.until(id, ({ status, rows }) => status === 'running' && rows.done > 16);
  expect(resumed.rows.done).toBeLessThan(112);
  expect(await second.end('SIGTERM')).toBe(0);

  const third = await serve();
  const done = await third.until(id, ({ status }) => status !== 'running' && status !== 'waiting');
  expect(done).toMatchObject({ status: 'done', error: null, rows: { done: 112, rejected: 5, total: 112 } });
  const { out, rejects } = await reference;
  for (const [what, path] of Object.entries({ 'results.csv': out, 'rejects.csv': rejects })) {
    const download = await third.get(`screenings/${id}/${what}`);
    expect(await download.text()).toBe(readFileSync(path, 'utf8'));
  }
  const rows = await (await third.get(`screenings/${id}/rows?limit=1`)).json();
  expect(rows).toMatchObject({ total: 107 });
  expect(await third.end('SIGTERM')).toBe(0);
}, 120_000);
