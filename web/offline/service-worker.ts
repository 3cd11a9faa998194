/**
 * Keeps the built page in the browser, so that it opens without a network. Each build has a cache of its own: what a page
 * loads later comes from the build it was started with. The API is never touched; what it says must be of this moment.
 *
 * The build fills in the two constants and puts the file beside index.html; see precache.ts.
 */

/** A hash over all files of the build. */
declare const BUILD_VERSION: string;
/** Every file of the build, relative to this one. */
declare const BUILD_FILES: readonly string[];

/** The library of types for service workers contradicts that for pages; these are the parts that are used here. */
interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface ServiceWorkerScope {
  readonly location: Location;
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Waiting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}

const worker = self as unknown as ServiceWorkerScope;

const PREFIX = 'shadeside-';
const CACHE = `${PREFIX}${BUILD_VERSION}`;
const INDEX = 'index.html';

worker.addEventListener('install', (event) => event.waitUntil(fillCache()));

worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));

worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const path = cachedPath(event.request);
  if (path !== null) event.respondWith(answer(event.request, path));
});

/** All files or none: a half-filled cache would break the page at the first thing that is loaded later. */
async function fillCache(): Promise<void> {
  const cache = await caches.open(CACHE);
  const requests = BUILD_FILES.map((path) => {
    // A hash in the name says that the browser's copy is the right one; the others are fetched anew.
    const cacheMode = path.startsWith('assets/') ? 'default' : 'reload';
    return new Request(addressOf(path), { cache: cacheMode });
  });
  await cache.addAll(requests);
}

/** The cache before this one stays for pages that still run the former build and load a part of it late. */
async function takeOver(): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** The path of the file that a request is for; null where the network alone answers. */
function cachedPath(request: Request): string | null {
  if (request.method !== 'GET') return null;
  const { scope } = worker.registration;
  const address = new URL(request.url);
  const bare = `${address.origin}${address.pathname}`;
  if (!bare.startsWith(scope)) return null;
  const path = bare.slice(scope.length);
  if (path === '') return INDEX;
  // A part of a former build is looked for, too.
  return BUILD_FILES.includes(path) || path.startsWith('assets/') ? path : null;
}

async function answer(request: Request, path: string): Promise<Response> {
  const address = addressOf(path);
  const own = await (await caches.open(CACHE)).match(address, { ignoreVary: true });
  return own ?? (await caches.match(address, { ignoreVary: true })) ?? fetch(request);
}

function addressOf(path: string): string {
  return new URL(path, worker.location.href).href;
}
