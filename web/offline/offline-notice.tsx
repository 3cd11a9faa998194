/** What the frame of the page says about its own state: no network, or a newer build that waits. */
import { useEffect, useState } from 'preact/hooks';
import { keepPageOffline } from './new-build.ts';
import { useOnline } from './use-online.ts';

const builds = keepPageOffline();

export function OfflineNotice() {
  const online = useOnline();
  const [takeOver, setTakeOver] = useState<(() => void) | null>(null);
  useEffect(() => builds.onNewBuild((next) => setTakeOver(() => next)), []);
  return (
    <div class="offline-notice" role="status">
      {!online && <p>You are offline. Everything on this page works; what you enter stays in this browser.</p>}
      {takeOver && (
        <p>
          A new version is ready. Nothing that you entered is lost.{' '}
          <button type="button" class="small-button" onClick={takeOver}>
            Reload
          </button>
        </p>
      )}
    </div>
  );
}
