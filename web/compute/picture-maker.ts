/** Has the pictures of a wall worked out in their own worker. The latest request ends the one before it. */
import type { Site } from '../../model/index.ts';
import type { PictureReply, PictureRequest } from './protocol.ts';

export interface PictureMaker {
  draw(site: Site, wall: string): void;
  stop(): void;
  dispose(): void;
}

export function createPictureMaker(onReply: (reply: PictureReply) => void): PictureMaker {
  let worker: Worker | null = null;
  let lastId = 0;

  function startWorker(): Worker {
    const started = new Worker(new URL('./pictures.worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', ({ data }: MessageEvent<PictureReply>) => {
      // What an ended request still had under way.
      if (data.id === lastId) onReply(data);
    });
    started.addEventListener('error', (event) => {
      event.preventDefault();
      // The next request starts a new worker.
      worker?.terminate();
      worker = null;
      onReply({ id: lastId, kind: 'failed', message: event.message || 'the worker could not start' });
    });
    return started;
  }

  function send(request: PictureRequest) {
    worker ??= startWorker();
    worker.postMessage(request);
  }

  return {
    draw(site, wall) {
      lastId += 1;
      send({ id: lastId, kind: 'draw', site, wall });
    },
    stop() {
      lastId += 1;
      if (worker !== null) send({ id: lastId, kind: 'stop' });
    },
    dispose() {
      lastId += 1;
      worker?.terminate();
      worker = null;
    },
  };
}
