/** How a screening stands, as server-sent events until it has ended. */
import type { Request, Response } from 'express';
import { stillAllowed } from '../access/access.ts';
import type { Screenings } from './jobs.ts';
import { isFinal, type ScreeningState } from './screening-state.ts';

/** Between two events; a change of status does not wait. */
const LEAST_MS = 250;

/** A comment now and then keeps proxies from taking the connection for dead; a token that was revoked ends it. */
const HEARTBEAT_MS = 15_000;

/** What tells one state from another. */
const idOf = ({ status, rows }: ScreeningState): string => `${status}-${rows.done}`;

/**
 * Answers with the states of a screening. A client that comes back and has seen the last one gets 204, on which an event source stops
 * asking.
 * @throws HttpError where there is no such screening
 */
export function sendEvents(request: Request, response: Response, screenings: Screenings, id: string): void {
  const first = screenings.state(id);
  const seen = request.get('Last-Event-ID');
  if (isFinal(first.status) && seen === idOf(first)) {
    response.status(204).end();
    return;
  }
  response.writeHead(200, {
    'Content-Type': 'text/event-stream',
    'Cache-Control': 'no-cache, no-transform',
    // Proxies of the nginx kind would gather events otherwise.
    'X-Accel-Buffering': 'no',
  });
  response.flushHeaders();
  if (request.method === 'HEAD') {
    response.end();
    return;
  }

  let sent: string | undefined = seen;
  let sentStatus = '';
  let sentAt = Number.NEGATIVE_INFINITY;
  let later: NodeJS.Timeout | undefined;

  const end = (): void => {
    clearTimeout(later);
    clearInterval(heartbeat);
    unwatch();
    response.end();
  };
  const send = (): void => {
    clearTimeout(later);
    later = undefined;
    const state = current();
    if (state === null) {
      end();
      return;
    }
    const event = idOf(state);
    // Whoever does not read gets the next state once there is room: what nobody takes would gather here.
    const isRead = !response.writableNeedDrain || isFinal(state.status);
    if (event !== sent && isRead) {
      response.write(`event: state\nid: ${event}\ndata: ${JSON.stringify(state)}\n\n`);
      sent = event;
      sentStatus = state.status;
      sentAt = performance.now();
    }
    if (isFinal(state.status) || screenings.stopping) end();
  };
  /** Null once it was taken away. */
  const current = (): ScreeningState | null => {
    try {
      return screenings.state(id);
    } catch {
      return null;
    }
  };
  const onChange = (): void => {
    const wait = sentAt + LEAST_MS - performance.now();
    if (wait <= 0 || current()?.status !== sentStatus || screenings.stopping) send();
    else later ??= setTimeout(send, wait);
  };
  const unwatch = screenings.watch(id, onChange);
  const heartbeat = setInterval(() => {
    if (!stillAllowed(response)) end();
    else if (!response.writableNeedDrain) response.write(': still here\n\n');
  }, HEARTBEAT_MS);
  heartbeat.unref();
  response.on('close', end);
  send();
}
