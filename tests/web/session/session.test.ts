import { afterEach, expect, test, vi } from 'vitest';
import { apiFetch, onSignedIn, onSignInAsked, signIn } from '../../../web/session/session.ts';

afterEach(() => vi.unstubAllGlobals());

const answering = (status: number) => vi.stubGlobal('fetch', async () => new Response(null, { status }));

test('the form is asked for by a 401 and nothing else, and the answer goes on', async () => {
  const asked = vi.fn();
  const stop = onSignInAsked(asked);
  for (const status of [200, 403, 503]) {
    answering(status);
    expect((await apiFetch('./api/sites')).status).toBe(status);
  }
  expect(asked).not.toHaveBeenCalled();
  answering(401);
  expect((await apiFetch('./api/sites')).status).toBe(401);
  expect(asked).toHaveBeenCalledTimes(1);
  stop();
  await apiFetch('./api/sites');
  expect(asked).toHaveBeenCalledTimes(1);
});

test('whoever was refused hears of a sign-in, and of no failed one', async () => {
  const begun = vi.fn();
  const stop = onSignedIn(begun);
  for (const [status, words] of [
    [401, /does not know/],
    [429, /Wait a while/],
    [500, /500/],
  ] as const) {
    answering(status);
    expect(await signIn('guess')).toMatch(words);
  }
  vi.stubGlobal('fetch', async () => {
    throw new TypeError('Failed to fetch');
  });
  expect(await signIn('right')).toMatch(/cannot be reached/);
  expect(begun).not.toHaveBeenCalled();
  answering(204);
  expect(await signIn('right')).toBeNull();
  expect(begun).toHaveBeenCalledTimes(1);
  stop();
});
