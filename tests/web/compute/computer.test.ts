import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createComputer } from '../../../web/compute/computer.ts';
import type { ComputeReply, ComputeRequest } from '../../../web/compute/protocol.ts';

/** A worker that answers when a test says so. */
class HeldWorker extends EventTarget {
  static started: HeldWorker[] = [];
  readonly asked: ComputeRequest[] = [];
  ended = false;
  constructor() {
    super();
    HeldWorker.started.push(this);
  }
  postMessage(request: ComputeRequest) {
    this.asked.push(request);
  }
  terminate() {
    this.ended = true;
  }
  /** Answers the oldest request, as far as anybody still listens. */
  answer() {
    const request = this.asked.shift();
    if (request === undefined) throw new Error('nothing was asked');
    const data: ComputeReply = { id: request.id, kind: 'failed', message: String(request.wall) };
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

const newest = () => HeldWorker.started.at(-1) as HeldWorker;

beforeEach(() => {
  HeldWorker.started = [];
  vi.stubGlobal('Worker', HeldWorker);
  vi.useFakeTimers();
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A computer whose replies name the wall that was asked for. */
function listening() {
  const heard: string[] = [];
  const phases: string[] = [];
  const computer = createComputer({
    onReply: (reply) => heard.push(reply.kind === 'failed' ? reply.message : reply.kind),
    onPhase: (phase) => phases.push(phase),
  });
  const ask = (wall: string) => computer.request({ input: {}, units: 'metric', wall });
  return { computer, ask, heard, phases };
}

test('of what is asked while one runs, only the newest is computed and told', () => {
  const { ask, heard } = listening();
  for (const wall of ['a', 'b', 'c']) ask(wall);
  newest().answer();
  expect(newest().asked.map(({ wall }) => wall)).toEqual(['c']);
  newest().answer();
  expect([heard, newest().asked]).toEqual([['c'], []]);
});

test('a slow run is given up for the newest, and what waited meanwhile never comes after it', () => {
  const { ask, heard, phases } = listening();
  ask('a');
  ask('b');
  vi.advanceTimersByTime(1000);
  ask('c');
  expect(HeldWorker.started.map(({ ended }) => ended)).toEqual([true, false]);
  newest().answer();
  expect([heard, newest().asked]).toEqual([['c'], []]);
  expect(phases.at(-1)).toBe('idle');
});

test('cancelled, it tells nothing, and goes on with what is asked next', () => {
  const { computer, ask, heard } = listening();
  ask('a');
  ask('b');
  computer.cancel();
  ask('c');
  newest().answer();
  expect([heard, newest().asked]).toEqual([['c'], []]);
});

test('a worker that fails is told of, and replaced at the next request only', () => {
  const { ask, heard } = listening();
  ask('a');
  newest().dispatchEvent(new Event('error', { cancelable: true }));
  expect([heard, HeldWorker.started.length]).toEqual([['the computation could not start'], 1]);
  ask('b');
  newest().answer();
  expect(heard).toEqual(['the computation could not start', 'b']);
});
