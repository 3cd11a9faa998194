/** `shadeside serve` and `npm start` as processes: they come up, answer, and stop when told to. */
import { createServer } from 'node:net';
import { expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { DEFAULT_PORT } from '../../server/settings.ts';
import { startServing } from './serving.ts';

test.each(['SIGINT', 'SIGTERM'] as const)('serve answers until %s, and then ends with code 0', async (signal) => {
  const serving = await startServing(['serve', '--port', '0']);
  expect(serving.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  const health = await fetch(`${serving.url}api/health`);
  expect(await health.json()).toMatchObject({ status: 'ok' });
  const page = await fetch(serving.url);
  expect(page.headers.get('content-type')).toMatch(/^text\/html/);
  expect(await serving.stop(signal)).toBe(0);
});

test('serve on a busy port ends with code 1 and the way out', async () => {
  const serving = await startServing(['serve', '--port', '0']);
  const port = new URL(serving.url).port;
  await expect(startServing(['serve', '--port', port])).rejects.toThrow(
    `ended with code 1: Port ${port} is in use by another program; choose another one with --port N.`,
  );
  await serving.stop('SIGTERM');
});

test('start shows the ranking of the built-in site, then serves', async () => {
  const serving = await startServing(['--port', '0'], 'start');
  expect(serving.printed).toContain(DEMO_SITE.title);
  expect(serving.printed).toMatch(/^1 +\S+ .*°F/m);
  expect((await fetch(serving.url)).status).toBe(200);
  expect(await serving.stop('SIGINT')).toBe(0);
});

test('start moves on to the next port when the usual one is busy', async () => {
  const other = createServer();
  // When something else holds the port already, that serves just as well.
  await new Promise<void>((resolve) => other.once('error', () => resolve()).listen(DEFAULT_PORT, '127.0.0.1', resolve));
  try {
    const serving = await startServing([], 'start');
    expect(Number(new URL(serving.url).port)).toBeGreaterThan(DEFAULT_PORT);
    await serving.stop('SIGTERM');
  } finally {
    other.close();
  }
});

test('start refuses a wrong option before it ranks', async () => {
  await expect(startServing(['--prot', '1'], 'start')).rejects.toThrow(
    /^ended with code 2: start: unknown option '--prot'/,
  );
});
