/**
 * How long a caller may take to send a body. Node ends every request that is not read within five minutes, a large table over a slow
 * line among them; here only what is no upload is, and an upload when hardly anything comes any more.
 */
import type { IncomingMessage, Server, ServerResponse } from 'node:http';

/** For the whole of a body. */
const WHOLE_MS = 300_000;

/** An upload goes on as long as so much comes in each minute: less than any line that is of use. */
const LEAST_BYTES = 60_000;
const LOOK_MS = 60_000;

/** Where tables are uploaded. */
const UPLOAD = /^\/api\/tables\/?(\?|$)/i;

/** Takes the place of Node's own limit for bodies; that for headers stays. */
export function endSlowBodies(server: Server): void {
  server.requestTimeout = 0;
  server.prependListener('request', (request: IncomingMessage, response: ServerResponse) => {
    const { socket, headers } = request;
    if (headers['content-length'] === undefined && headers['transfer-encoding'] === undefined) return;
    const began = performance.now();
    // The beginning of the body may have come with the headers already.
    let seen = 0;
    const timer = setInterval(() => {
      // What has its answer already is no upload any more, whatever still comes.
      const isUpload = request.method === 'POST' && UPLOAD.test(request.url ?? '') && !response.writableEnded;
      const came = socket.bytesRead - seen;
      seen = socket.bytesRead;
      if (request.complete || socket.destroyed) clearInterval(timer);
      else if (isUpload ? came < LEAST_BYTES : performance.now() - began >= WHOLE_MS) socket.destroy();
    }, LOOK_MS);
    timer.unref();
    request.once('end', () => clearInterval(timer));
  });
}
