/** The exchange with the server as this page does it: one for all views, from the first that shows saved sites on. */
import { useEffect, useState } from 'preact/hooks';
import { apiFetch, onSignedIn } from '../../session/session.ts';
import { siteDatabase } from '../site-database.ts';
import { serverSites } from './server-sites.ts';
import { SiteSync, type SyncStatus } from './site-sync.ts';

/** How often a page that is looked at asks for what others changed. */
const LOOK_EVERY_MS = 60_000;

export const server = serverSites(apiFetch);

const sync = new SiteSync({
  shelf: siteDatabase,
  server,
  isOnline: () => navigator.onLine,
  // Over plain http browsers have no locks; two tabs at once cost requests there, and nothing else.
  alone: async (work) => (navigator.locks ? navigator.locks.request('shadeside.sync', work) : work()),
});

export function useSiteSync(): SyncStatus {
  const [status, setStatus] = useState(sync.status);
  useEffect(() => {
    const stop = sync.onStatus(setStatus);
    start();
    setStatus(sync.status);
    return stop;
  }, []);
  return status;
}

let started = false;

function start() {
  if (started) return;
  started = true;
  const look = () => void sync.look();
  const lookIfSeen = () => {
    // Who put the form to sign in away is not shown it again each minute.
    if (document.visibilityState === 'visible' && sync.status.kind !== 'locked') look();
  };
  siteDatabase.onChange(() => {
    siteDatabase.all().then(
      (sites) => sync.sitesChanged(sites),
      () => {
        // The panel says that sites cannot be kept.
      },
    );
  });
  onSignedIn(look);
  addEventListener('online', look);
  addEventListener('offline', look);
  document.addEventListener('visibilitychange', lookIfSeen);
  setInterval(lookIfSeen, LOOK_EVERY_MS);
  look();
}
