import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { ApiFailure, type Screening, type Status } from '../../../web/area/api.ts';
import { followScreening, type Means } from '../../../web/area/follow.ts';

const state = (status: Status, done = 0): Screening => ({
  id: 'a',
  name: 'a',
  status,
  error: null,
  createdAt: '',
  startedAt: null,
  endedAt: null,
  rows: { done, rejected: 0, total: 100 },
  ratePerS: null,
  etaS: null,
  origin: 'grid',
});

type Heard = Parameters<Means['open']>[1];

/** A server whose answers and streams the test plays. */
function played() {
  const streams: { heard: Heard; closed: boolean }[] = [];
  const told: string[] = [];
  const server = { answer: async (): Promise<Screening> => state('running'), asked: 0 };
  const stop = followScreening(
    'a',
    {
      ask: () => {
        server.asked += 1;
        return server.answer();
      },
      open(_id, heard) {
        const stream = { heard, closed: false };
        streams.push(stream);
        return { close: () => (stream.closed = true) };
      },
    },
    {
      state: ({ status, rows }) => told.push(`${status} ${rows.done}`),
      heard: (heard) => told.at(-1) !== `heard ${heard}` && told.push(`heard ${heard}`),
      gone: (why) => told.push(why),
    },
  );
  return { streams, told, server, stop };
}

const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('a screening is followed', () => {
  test('by its stream, to its end, and no further', async () => {
    const { streams, told, server } = played();
    await pass(0);
    streams[0]?.heard.state(state('running', 50));
    streams[0]?.heard.state(state('done', 100));
    expect(told.at(-1)).toBe('done 100');
    expect(streams[0]?.closed).toBe(true);
    const { asked } = server;
    await pass(600_000);
    expect(server.asked).toBe(asked);
    expect(streams).toHaveLength(1);
  });

  test('by asking where streams do not come through', async () => {
    const { streams, told, server } = played();
    for (let k = 0; k < 10; k += 1) {
      await pass(2000);
      for (const { heard, closed } of streams) if (!closed) heard.broken(false);
    }
    expect(streams).toHaveLength(3);
    server.answer = async () => state('done', 100);
    await pass(2000);
    expect(told.at(-1)).toBe('done 100');
  });

  test('by asking where a stream is open and says nothing', async () => {
    const { told, server } = played();
    await pass(0);
    server.answer = async () => state('running', 70);
    await pass(15_000);
    expect(told.at(-1)).toBe('running 70');
  });

  test('through a restart of the server', async () => {
    const { streams, told, server } = played();
    await pass(0);
    server.answer = async () => {
      throw new ApiFailure(0, 'gone');
    };
    streams[0]?.heard.broken(true);
    await pass(2000);
    expect(told.at(-1)).toBe('heard false');
    await pass(60_000);
    server.answer = async () => state('running', 80);
    await pass(10_000);
    expect(told.slice(-2)).toEqual(['heard true', 'running 80']);
  });

  test('until it is deleted', async () => {
    const { told, server, streams } = played();
    await pass(0);
    server.answer = async () => {
      throw new ApiFailure(404, 'no such screening');
    };
    streams[0]?.heard.broken(false);
    await pass(60_000);
    expect(told.at(-1)).toBe('There is no such screening any more.');
    const { asked } = server;
    await pass(60_000);
    expect(server.asked).toBe(asked);
  });

  test('not where the server asks for a token: the page does, once', async () => {
    const { told, server } = played();
    server.answer = async () => {
      throw new ApiFailure(401, 'a token is needed');
    };
    await pass(60_000);
    expect(told.at(-1)).toContain('token');
    expect(server.asked).toBeLessThanOrEqual(2);
  });

  test('no longer than it is wanted', async () => {
    const { streams, told, stop } = played();
    await pass(0);
    stop();
    const before = told.length;
    streams[0]?.heard.state(state('running', 90));
    await pass(60_000);
    expect(told).toHaveLength(before);
    expect(streams[0]?.closed).toBe(true);
  });
});
