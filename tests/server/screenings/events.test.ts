/** Events of a screening to a caller who does not read, without a server. */
import { EventEmitter } from 'node:events';
import type { Request, Response } from 'express';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sendEvents } from '../../../server/screenings/events.ts';
import type { Screenings } from '../../../server/screenings/jobs.ts';
import type { ScreeningState } from '../../../server/screenings/screening-state.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** An answer whose reader can stop reading. */
class Answer extends EventEmitter {
  writableNeedDrain = false;
  readonly written: string[] = [];
  ended = false;
  readonly locals: Record<string, unknown> = {};
  writeHead() {}
  flushHeaders() {}
  write(text: string) {
    this.written.push(text);
  }
  end() {
    this.ended = true;
  }
}

function sending(method: 'GET' | 'HEAD') {
  const answer = new Answer();
  let state = { status: 'running', rows: { done: 0 } } as ScreeningState;
  let tell = () => {};
  const unwatch = vi.fn();
  const screenings = {
    stopping: false,
    state: () => state,
    watch: (_id: string, onChange: () => void) => {
      tell = onChange;
      return unwatch;
    },
  } as unknown as Screenings;
  const request = { method, get: () => undefined } as unknown as Request;
  sendEvents(request, answer as unknown as Response, screenings, 'id');
  const become = (status: ScreeningState['status'], done: number) => {
    state = { status, rows: { done } } as ScreeningState;
    tell();
    vi.advanceTimersByTime(20_000);
  };
  return { answer, become, unwatch };
}

test('do not gather where nobody reads, and go on when there is room again', () => {
  const { answer, become, unwatch } = sending('GET');
  answer.writableNeedDrain = true;
  for (let done = 1; done <= 100; done += 1) become('running', done);
  expect(answer.written).toHaveLength(1);
  answer.writableNeedDrain = false;
  become('running', 101);
  expect(answer.written[1]).toContain('id: running-101');
  answer.writableNeedDrain = true;
  become('done', 102);
  expect(answer.written.at(-1)).toContain('id: done-102');
  expect([answer.ended, unwatch.mock.calls.length]).toEqual([true, 1]);
});

test('are not begun for who asks for the headers only', () => {
  const { answer, unwatch } = sending('HEAD');
  expect([answer.ended, answer.written, unwatch.mock.calls.length]).toEqual([true, [], 0]);
});

test('end soon after their token was revoked', () => {
  const { answer, become } = sending('GET');
  let allowed = true;
  answer.locals['stillAllowed'] = () => allowed;
  become('running', 1);
  expect(answer.ended).toBe(false);
  allowed = false;
  vi.advanceTimersByTime(15_000);
  expect(answer.ended).toBe(true);
});
