/** How far the saved sites of this browser are sent, in a few words. */
import { nameOf, type SavedSite } from '../saved-site.ts';
import { inConflict, isToSend } from './merging.ts';
import type { SyncStatus } from './site-sync.ts';

/** `clock` writes a time as the device does. */
export function syncWords(status: SyncStatus, sites: readonly SavedSite[], clock: (at: Date) => string): string {
  if (status.kind === 'asking') return '';
  if (status.kind === 'none') return 'Saved sites are kept in this browser only: no server keeps them.';
  const refused = sites.filter((site) => isToSend(site) && status.refused.get(site.id)?.edition === site.edition);
  const waiting = sites.filter((site) => isToSend(site) && !refused.includes(site));
  const open = inConflict(sites).length;
  return [
    open > 0 && `${counted(open, 'site has', 'sites have')} two states: choose one.`,
    ...refused.map(
      ({ id, draft }) => `The server does not take “${nameOf(draft)}”: ${status.refused.get(id)?.why ?? ''}.`,
    ),
    waiting.length > 0
      ? `${counted(waiting.length, 'site waits', 'sites wait')} to be sent${hindrance(status)}.`
      : refused.length + open === 0 && rest(status, sites, clock),
  ]
    .filter(Boolean)
    .join(' ');
}

function rest({ kind, at, why }: SyncStatus, sites: readonly SavedSite[], clock: (at: Date) => string): string {
  if (kind === 'failed' || kind === 'locked') return `Nothing waits to be sent, but ${why}.`;
  if (sites.every(({ deleted }) => deleted)) return 'What you save is sent to the server as well.';
  return at === null ? 'Nothing waits to be sent.' : `All sent at ${clock(at)}.`;
}

function hindrance({ kind, why }: SyncStatus): string {
  if (kind === 'offline') return '; you are offline';
  if (kind === 'locked') return `: ${why}`;
  return kind === 'failed' ? `: ${why}; it is tried again` : '';
}

function counted(count: number, one: string, more: string): string {
  return `${count} ${count === 1 ? one : more}`;
}
