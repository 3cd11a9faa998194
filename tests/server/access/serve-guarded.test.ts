/** The built server on an address that others reach: it asks for a token, which it prints once. */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../../server/bin/prepare.mjs';
import { runBuilt } from '../run-built.ts';
import { startServing } from '../serving.ts';

test('the first token is printed once, more are made beside the running server, and a revoked one ends', async () => {
  const data = join(ROOT, '.test-output/data', randomUUID());
  const serve = () => startServing(['serve', '--host', '0.0.0.0', '--port', '0', '--data', data]);
  const first = await serve();
  const [, token = ''] = /shown this once: (\S+)/.exec(first.printed) ?? [];
  expect(token).toMatch(/^[\w-]{43}$/);
  const status = async (given?: string) =>
    (await fetch(`${first.url}api/schema`, given ? { headers: { Authorization: `Bearer ${given}` } } : {})).status;
  expect([await status(), await status(token), (await fetch(`${first.url}api/health`)).status]).toEqual([
    401, 200, 200,
  ]);
  expect((await fetch(first.url)).status).toBe(200);

  const made = (await runBuilt(['token', 'new', '--name', 'planners', '--data', data])).stdout.trim();
  expect(await status(made)).toBe(200);
  const list = await runBuilt(['token', 'list', '--data', data]);
  expect(list.stdout).toMatch(/1 +\d{4}-\d\d-\d\d +first\n.*2 +\d{4}-\d\d-\d\d +planners/);
  expect(list.stdout).not.toContain(made);
  expect((await runBuilt(['token', 'revoke', '1', '--data', data])).code).toBe(0);
  expect([await status(token), await status(made)]).toEqual([401, 200]);
  await first.stop('SIGTERM');

  const second = await serve();
  expect(second.printed).not.toContain('shown this once');
  await second.stop('SIGTERM');
});

test.each([
  [['token'], /^token: "" is no action: new, list or revoke/],
  [['token', 'revoke', 'x'], /^token: revoke x: the number of a token is needed/],
  [['token', 'revoke', '7'], /^token: there is no token 7 to revoke/],
  [['token', 'new', 'x'], /^token: "x" is one argument too many/],
])('%j is refused with code 2', async (args, message) => {
  const run = await runBuilt(args);
  expect([run.code, run.stdout]).toEqual([2, '']);
  expect(run.stderr).toMatch(message);
});
