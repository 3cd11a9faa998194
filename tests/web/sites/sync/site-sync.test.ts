/** When sites are exchanged, and what is said about it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type SavedSite, savedFrom } from '../../../../web/sites/saved-site.ts';
import { ServerFailure } from '../../../../web/sites/sync/server-sites.ts';
import { SiteSync } from '../../../../web/sites/sync/site-sync.ts';
import { syncWords } from '../../../../web/sites/sync/sync-words.ts';
import { type MemoryServer, MemoryShelf, memoryServer, siteId } from './places.ts';

let shelf: MemoryShelf;
let server: MemoryServer;
let online: boolean;
let sync: SiteSync;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'], now: new Date('2026-07-05T12:00:00Z') });
  shelf = new MemoryShelf();
  server = memoryServer();
  online = true;
  sync = new SiteSync({ shelf, server, isOnline: () => online, alone: (work) => work() });
});
afterEach(() => {
  vi.useRealTimers();
});

const sites = () => [...shelf.sites.values()];
const words = () => syncWords(sync.status, sites(), (at) => at.toISOString().slice(11, 16));

async function save(title: string, id = siteId(0)) {
  await shelf.change(id, (former) => savedFrom(former, { id, draft: { title } }, '', new Date()));
  sync.sitesChanged(sites());
}

/** Lets everything happen that waits for nothing but itself. */
const settled = () => vi.advanceTimersByTimeAsync(0);

describe('a page with a server that keeps sites', () => {
  it('says that saving sends, sends what is saved and says when', async () => {
    expect(words()).toBe('');
    await sync.look();
    expect(words()).toBe('What you save is sent to the server as well.');
    await save('yard');
    expect(words()).toBe('1 site waits to be sent.');
    await settled();
    expect(server.sites.read(siteId(0))?.draft).toEqual({ title: 'yard' });
    expect(words()).toBe('All sent at 12:00.');
  });

  it('does not say another time while nothing happens', async () => {
    await save('yard');
    await settled();
    vi.setSystemTime(new Date('2026-07-05T13:30:00Z'));
    await sync.look();
    expect(words()).toBe('All sent at 12:00.');
    await save('yard two');
    await settled();
    expect(words()).toBe('All sent at 13:30.');
  });

  it('keeps sites waiting without a network and sends them with the next one', async () => {
    online = false;
    await sync.look();
    await save('yard');
    await save('shed', siteId(1));
    await settled();
    expect(words()).toBe('2 sites wait to be sent; you are offline.');
    online = true;
    await sync.look();
    expect(words()).toBe('All sent at 12:00.');
    expect(server.sites.list(0).sites).toHaveLength(2);
  });

  it('names conflicts and what the server does not take', async () => {
    server.sites.change(siteId(0), { base: { revision: null }, draft: { title: 'theirs' } });
    await save('mine');
    await settled();
    expect(words()).toBe('1 site has two states: choose one.');
    const { send } = server;
    server.send = async () => ({ kind: 'refused', why: 'draft: is nested too deep' });
    await save('deep', siteId(1));
    await settled();
    server.send = send;
    expect(words()).toBe(
      '1 site has two states: choose one. The server does not take “deep”: draft: is nested too deep.',
    );
  });
});

describe('a failure', () => {
  it('is tried again after longer and longer waits, and at once when asked', async () => {
    const asked = vi.spyOn(server, 'store').mockRejectedValue(new ServerFailure('the server cannot be reached'));
    await save('yard');
    await settled();
    expect(words()).toBe('1 site waits to be sent: the server cannot be reached; it is tried again.');
    for (const waitS of [2, 4, 8, 16, 32, 64, 128, 256, 300, 300]) {
      const { length } = asked.mock.calls;
      // A save meanwhile does not shorten the wait.
      sync.sitesChanged(sites());
      await vi.advanceTimersByTimeAsync(waitS * 1000 - 1);
      expect(asked.mock.calls.length).toBe(length);
      await vi.advanceTimersByTimeAsync(1);
      expect(asked.mock.calls.length).toBe(length + 1);
    }
    asked.mockRestore();
    await sync.look();
    expect(words()).toMatch(/^All sent/);
    await vi.advanceTimersByTimeAsync(1_000_000);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('leaves a server alone for as long as it asks', async () => {
    const asked = vi
      .spyOn(server, 'list')
      .mockRejectedValueOnce(new ServerFailure('the server cannot answer now', { retryAfterS: 90 }));
    await sync.look();
    await vi.advanceTimersByTimeAsync(89_999);
    expect(asked).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(asked).toHaveBeenCalledTimes(2);
    expect(sync.status.kind).toBe('well');
  });

  it('that signing in would mend is left to the person', async () => {
    const locked = new ServerFailure('the server asks you to sign in', { isLocked: true });
    vi.spyOn(server, 'list').mockRejectedValueOnce(locked);
    await save('yard');
    await settled();
    expect(words()).toBe('1 site waits to be sent: the server asks you to sign in.');
    expect(vi.getTimerCount()).toBe(0);
    await sync.look();
    expect(words()).toMatch(/^All sent/);
  });

  it('of the storage of this browser is not blamed on the server', async () => {
    vi.spyOn(shelf, 'all').mockRejectedValueOnce(new Error('blocked'));
    await sync.look();
    expect(sync.status).toMatchObject({ kind: 'failed', why: 'the storage of this browser cannot be used' });
  });
});

describe('a page without a server that keeps sites', () => {
  it('says so, keeps what is saved, and sends it once there is one', async () => {
    const asked = vi.spyOn(server, 'store').mockResolvedValue(null);
    await save('yard');
    await settled();
    expect(words()).toBe('Saved sites are kept in this browser only: no server keeps them.');
    expect(vi.getTimerCount()).toBe(0);
    asked.mockRestore();
    await sync.look();
    expect(words()).toMatch(/^All sent/);
  });

  it('finds another store after the server came back', async () => {
    await save('yard');
    await settled();
    const other = memoryServer();
    Object.assign(server, { store: other.store, list: other.list, read: other.read, send: other.send, id: other.id });
    await sync.look();
    expect(other.sites.read(siteId(0))?.draft).toEqual({ title: 'yard' });
    expect(sync.status.store).toBe(other.id);
    expect((shelf.sites.get(siteId(0)) as SavedSite).server).toEqual({ store: other.id, revision: 1 });
  });
});
