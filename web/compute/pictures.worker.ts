/**
 * Works out what the pictures of a wall show, in a worker of its own: the rose costs as much as ranking many walls, and
 * no edit shall wait for it. Takes a site that the other worker has read, so it needs no reader.
 */
import { bearingRose, ROSE_STEP_DEG, type RosePoint, sunDiagram, wallPlan } from '../../model/index.ts';
import type { PictureReply, PictureRequest } from './protocol.ts';

/** Progress is told this often at most: each telling makes the page draw. */
const TELL_EVERY_MS = 200;

/** The latest request; whatever belongs to an older one stops. */
let latestId = 0;

self.addEventListener('message', ({ data }: MessageEvent<PictureRequest>) => {
  latestId = data.id;
  if (data.kind === 'draw') void draw(data);
});

async function draw({ id, site, wall }: Extract<PictureRequest, { kind: 'draw' }>) {
  try {
    tell({ id, kind: 'view', diagram: sunDiagram(site, wall), plan: wallPlan(site, wall) });
    const points: RosePoint[] = [];
    let toldAt = performance.now();
    for (const point of bearingRose(site, wall)) {
      points.push(point);
      if (performance.now() - toldAt > TELL_EVERY_MS) {
        toldAt = performance.now();
        tell({ id, kind: 'progress', done: (points.length * ROSE_STEP_DEG) / 360 });
      }
      await messagesRead();
      if (latestId !== id) return;
    }
    tell({ id, kind: 'rose', points });
  } catch (error) {
    tell({ id, kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
}

function tell(reply: PictureReply) {
  self.postMessage(reply);
}

const { port1: ownPort, port2: backPort } = new MessageChannel();

/** Lets waiting messages in. A timer would do, too, but browsers hold nested ones back by four milliseconds. */
function messagesRead(): Promise<void> {
  return new Promise((resolve) => {
    ownPort.onmessage = () => resolve();
    backPort.postMessage(null);
  });
}
