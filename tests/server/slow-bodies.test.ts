/** Bodies that take their time, over sockets; only the clock is not real. */
import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { endSlowBodies } from '../../server/slow-bodies.ts';

const MINUTE_MS = 60_000;
const PIECE = 'x'.repeat(70_000);

let server: Server;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'performance'] });
});
afterEach(() => {
  vi.useRealTimers();
  server.closeAllConnections();
  server.close();
});

/** Sends so many pieces, a minute between them, and gives back how many came before the connection was cut. */
async function minutesOf(path: string, pieces: { of: number; text?: string; answerEarly?: boolean }): Promise<number> {
  const { of, text = PIECE, answerEarly = false } = pieces;
  let came = 0;
  let arrived = () => {};
  server = createServer((request, response) => {
    if (answerEarly) response.end('early');
    request.on('error', () => {});
    request.on('data', (chunk: Buffer) => {
      came += chunk.length;
      if (came % text.length === 0) arrived();
    });
    request.on('end', () => response.end());
  });
  endSlowBodies(server);
  await once(server.listen(0, '127.0.0.1'), 'listening');
  const socket = connect((server.address() as AddressInfo).port, '127.0.0.1');
  socket.on('error', () => {});
  socket.resume();
  const closed = once(socket, 'close');
  socket.write(`POST ${path} HTTP/1.1\r\nHost: x\r\nContent-Length: ${of * text.length}\r\nConnection: close\r\n\r\n`);
  for (let piece = 0; piece < of; piece += 1) {
    const here = new Promise<void>((resolve) => {
      arrived = resolve;
    });
    socket.write(text);
    await Promise.race([here, closed]);
    if (socket.closed) break;
    vi.advanceTimersByTime(MINUTE_MS);
    // What was destroyed is told in a turn of its own.
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  await closed;
  return came / text.length;
}

test('an upload goes on as long as something comes, longer than Node would let it', async () => {
  expect(await minutesOf('/api/tables?name=a.csv', { of: 12 })).toBe(12);
});

test('an upload of which hardly anything comes is cut off', async () => {
  expect(await minutesOf('/api/tables', { of: 12, text: 'x' })).toBe(1);
});

test.each(['/api/tables/1/check', '/api/rank', '/api/tablesx'])('a body for %s has five minutes', async (path) => {
  expect(await minutesOf(path, { of: 12 })).toBe(5);
});

test('what comes after its answer has five minutes, too', async () => {
  expect(await minutesOf('/api/tables', { of: 12, answerEarly: true })).toBeLessThanOrEqual(5);
});
