/**
 * Registers the service worker and tells when a newer build of the page waits to take over. It does so only when a
 * person says so, or when no page of the old build is open any more.
 */

/** A page on a home screen may stay open for weeks; a browser looks for a new build only when a page is loaded. */
const LOOK_EVERY_MS = 3_600_000;

export interface Builds {
  /** Calls back with the way to the new build, once there is one. Gives back how to stop. */
  onNewBuild(tell: (takeOver: () => void) => void): () => void;
}

/** Starts the service worker where there can be one: over https or on this machine, and not while developing. */
export function keepPageOffline(): Builds {
  const listeners = new Set<(takeOver: () => void) => void>();
  let takeOver: (() => void) | null = null;
  const found = (waiting: ServiceWorker) => {
    takeOver = () => switchTo(waiting);
    for (const tell of listeners) tell(takeOver);
  };
  if (import.meta.env.PROD && 'serviceWorker' in navigator) afterLoad(() => register(found));
  return {
    onNewBuild(tell) {
      listeners.add(tell);
      if (takeOver !== null) tell(takeOver);
      return () => listeners.delete(tell);
    },
  };
}

/** The page computes first; filling the cache can wait. */
function afterLoad(work: () => void) {
  if (document.readyState === 'complete') work();
  else addEventListener('load', work, { once: true });
}

async function register(found: (waiting: ServiceWorker) => void) {
  try {
    const registration = await navigator.serviceWorker.register('./service-worker.js', { updateViaCache: 'none' });
    watch(registration, found);
  } catch {
    // Private windows and strict settings refuse it; the page works, with a network.
  }
}

function watch(registration: ServiceWorkerRegistration, found: (waiting: ServiceWorker) => void) {
  const look = () => {
    // Without a controller this is the first build that the browser sees, not a newer one.
    if (registration.waiting && navigator.serviceWorker.controller) found(registration.waiting);
  };
  look();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', look);
  });
  let looked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - looked < LOOK_EVERY_MS) return;
    looked = Date.now();
    // Fails without a network.
    registration.update().catch(() => {});
  });
}

/** Edits are kept as they are made, so that a reload loses none. */
function switchTo(waiting: ServiceWorker) {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage('take over');
}
