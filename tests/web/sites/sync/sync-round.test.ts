/** Exchanges between browsers and a server, by example and by chance: nothing that somebody saved goes away unasked. */
import fc from 'fast-check';
import { beforeEach, describe, expect, it, test } from 'vitest';
import type { Draft } from '../../../../web/site/draft.ts';
import { deletedSite, restoredSite, type SavedSite, savedFrom } from '../../../../web/sites/saved-site.ts';
import { type Choice, decided, inConflict } from '../../../../web/sites/sync/merging.ts';
import { type Known, syncRound } from '../../../../web/sites/sync/sync-round.ts';
import { type MemoryServer, MemoryShelf, memoryServer, siteId } from './places.ts';

const NOW = new Date('2026-07-05T12:00:00Z');
const ID = siteId(0);

class Browser {
  readonly shelf = new MemoryShelf();
  readonly refused = new Map();
  known: Known | null = null;
  server: MemoryServer;

  constructor(server: MemoryServer) {
    this.server = server;
  }

  async sync() {
    const { shelf, server, known, refused } = this;
    this.known = await syncRound({ shelf, server, known, refused, now: NOW });
  }

  site(id = ID): SavedSite | undefined {
    return this.shelf.sites.get(id);
  }

  save(title: string, id = ID) {
    return this.shelf.change(id, (former) => savedFrom(former, { id, draft: { title } }, '', NOW));
  }

  remove(id = ID) {
    return this.shelf.change(id, (former) => (former?.deleted === false ? deletedSite(former, NOW) : undefined));
  }

  decide(choice: Choice, id = ID) {
    const shown = this.site(id) as SavedSite;
    return this.shelf.change(id, (former) => decided(former, shown, choice)?.site);
  }

  /** What stands in the list, by title. */
  titles(): unknown[] {
    return [...this.shelf.sites.values()].filter(({ deleted }) => !deleted).map(({ draft }) => draft['title']);
  }
}

let server: MemoryServer;
let one: Browser;
let two: Browser;
beforeEach(() => {
  server = memoryServer();
  [one, two] = [new Browser(server), new Browser(server)];
});

const there = () => server.sites.read(ID);

/** A site that both browsers have as the server has it. */
async function shared(title = 'start') {
  await one.save(title);
  await one.sync();
  await two.sync();
}

describe('an exchange', () => {
  it('sends what waits and takes in what others sent', async () => {
    await shared();
    expect(one.site()).toMatchObject({ waits: false, server: { store: server.id, revision: 1 } });
    expect(two.site()).toMatchObject({ draft: { title: 'start' }, edition: 1, waits: false, conflict: null });
    await two.save('next');
    await two.sync();
    await one.sync();
    // A grown edition tells open tabs that there is a newer state.
    expect(one.site()).toMatchObject({ draft: { title: 'next' }, edition: 2, server: { revision: 2 } });
  });

  it('that fails begins nothing more, and ends when what it had begun has ended', async () => {
    for (let k = 0; k < 40; k++)
      server.sites.change(siteId(10 + k), { base: { revision: null }, draft: { title: `${k}` } });
    let begun = 0;
    let ended = 0;
    const { read } = server;
    server.read = async (id) => {
      begun++;
      const turn = begun;
      await new Promise((resolve) => setTimeout(resolve, turn === 2 ? 1 : 5));
      ended++;
      if (turn === 2) throw new Error('the line is down');
      return read(id);
    };
    await expect(one.sync()).rejects.toThrow('the line is down');
    expect(begun).toBeLessThan(10);
    expect(ended).toBe(begun);
  });

  it('shows a change on both sides as a conflict and replaces neither', async () => {
    await shared();
    await one.save('mine');
    await two.save('theirs');
    await two.sync();
    await one.sync();
    await one.sync();
    expect(one.site()).toMatchObject({
      draft: { title: 'mine' },
      conflict: { draft: { title: 'theirs' }, revision: 2 },
    });
    expect(there()).toMatchObject({ revision: 2, draft: { title: 'theirs' } });
  });

  it('shows a conflict that only the sending finds', async () => {
    await shared();
    await one.save('mine');
    const list = server.list;
    server.list = async (since) => {
      const listing = await list(since);
      server.list = list;
      server.sites.change(ID, { base: { revision: 1 }, draft: { title: 'theirs' } });
      return listing;
    };
    await one.sync();
    expect(one.site()).toMatchObject({ draft: { title: 'mine' }, conflict: { draft: { title: 'theirs' } } });
  });

  it('finds no conflict where both sides say the same', async () => {
    await shared();
    await one.save('same');
    await two.save('same');
    await two.sync();
    await one.sync();
    expect(one.site()).toMatchObject({ waits: false, conflict: null, server: { revision: 2 } });
    expect(there()?.revision).toBe(2);
  });

  it('sends again what was edited while it was on its way', async () => {
    await one.save('first');
    server.meanwhile = () => one.save('second');
    await one.sync();
    expect(one.site()).toMatchObject({ draft: { title: 'second' }, waits: true, server: { revision: 1 } });
    await one.sync();
    expect(there()).toMatchObject({ revision: 2, draft: { title: 'second' } });
  });

  it('deletes on the server what was deleted here while it was on its way for the first time', async () => {
    await one.save('first');
    server.meanwhile = () => one.remove();
    await one.sync();
    await one.sync();
    expect(there()?.deleted).toBe(true);
    expect(one.titles()).toEqual([]);
  });

  it('does not send what the server refused until it is another edition', async () => {
    await one.save('huge');
    const { send } = server;
    let sent = 0;
    server.send = async () => {
      sent += 1;
      return { kind: 'refused', why: 'the body is too large' };
    };
    await one.sync();
    await one.sync();
    expect(sent).toBe(1);
    server.send = send;
    await one.save('small');
    await one.sync();
    expect(there()).toMatchObject({ draft: { title: 'small' } });
  });
});

describe('a deletion', () => {
  it('goes to the server and to other browsers', async () => {
    await shared();
    await one.remove();
    await one.sync();
    await two.sync();
    expect(there()?.deleted).toBe(true);
    expect(two.site()).toBeUndefined();
  });

  it('that is taken back after it was sent goes on from there', async () => {
    await shared();
    const former = one.site() as SavedSite;
    await one.remove();
    await one.sync();
    await one.shelf.change(ID, (left) => restoredSite(former, left));
    await one.sync();
    expect(one.site()).toMatchObject({ conflict: null, waits: false });
    expect(there()).toMatchObject({ deleted: false, revision: 3 });
  });

  it('that is taken back leaves alone what another tab has saved since', async () => {
    await shared();
    const former = one.site() as SavedSite;
    await one.remove();
    await one.save('saved in another tab');
    await one.shelf.change(ID, (left) => restoredSite(former, left));
    expect(one.site()).toMatchObject({ draft: { title: 'saved in another tab' }, deleted: false });
  });

  it('is forgotten an hour later', async () => {
    await shared();
    await one.remove();
    await one.sync();
    expect(one.site()).toMatchObject({ deleted: true, waits: false });
    const { shelf, refused } = one;
    await syncRound({ shelf, server, known: null, refused, now: new Date(NOW.getTime() + 3_600_001) });
    expect(one.site()).toBeUndefined();
  });

  it('here against a change there is a conflict', async () => {
    await shared();
    await one.remove();
    await two.save('theirs');
    await two.sync();
    await one.sync();
    expect(one.site()).toMatchObject({ deleted: true, conflict: { draft: { title: 'theirs' } } });
    expect(inConflict([...one.shelf.sites.values()])).toHaveLength(1);
    await one.decide('theirs');
    expect(one.titles()).toEqual(['theirs']);
    await two.sync();
    expect(two.titles()).toEqual(['theirs']);
  });

  it('here against a change there is sent when it is chosen', async () => {
    await shared();
    await one.remove();
    await two.save('theirs');
    await two.sync();
    await one.sync();
    await one.decide('mine');
    await one.sync();
    expect(there()).toMatchObject({ deleted: true, revision: 3 });
  });

  it('there against a change here is a conflict', async () => {
    await shared();
    await one.save('mine');
    await two.remove();
    await two.sync();
    await one.sync();
    expect(one.site()).toMatchObject({ draft: { title: 'mine' }, conflict: { draft: null, revision: 2 } });
    await one.decide('mine');
    await one.sync();
    await two.sync();
    expect(two.titles()).toEqual(['mine']);
  });

  it('there of a site that is saved anew here is a conflict', async () => {
    await shared();
    await two.remove();
    await two.sync();
    await one.sync();
    expect(one.site()).toBeUndefined();
    await one.save('from the form');
    await one.sync();
    expect(one.site()).toMatchObject({ conflict: { draft: null } });
  });
});

describe('a decision', () => {
  beforeEach(async () => {
    await shared();
    await one.save('mine');
    await two.save('theirs');
    await two.sync();
    await one.sync();
  });

  it('for mine is sent on top of theirs', async () => {
    await one.decide('mine');
    await one.sync();
    await two.sync();
    expect(two.titles()).toEqual(['mine']);
    expect(server.sites.revision(ID, 2)?.draft).toEqual({ title: 'theirs' });
  });

  it('for mine does not replace a state that nobody saw', async () => {
    await two.save('theirs, later');
    await two.sync();
    await one.decide('mine');
    await one.sync();
    expect(one.site()).toMatchObject({ draft: { title: 'mine' }, conflict: { draft: { title: 'theirs, later' } } });
  });

  it('is not taken when either side moved on since it was shown', async () => {
    const shown = one.site() as SavedSite;
    await two.save('theirs, later');
    await two.sync();
    await one.sync();
    expect(decided(one.site(), shown, 'theirs')).toBeNull();
    await one.save('mine, later');
    expect(decided(one.site(), one.site() as SavedSite, 'theirs')).not.toBeNull();
    expect(decided(one.site(), shown, 'mine')).toBeNull();
  });
});

describe('another store', () => {
  it('is sent what the former one had', async () => {
    await shared();
    const other = memoryServer();
    one.server = other;
    await one.sync();
    expect(other.sites.read(ID)).toMatchObject({ revision: 1, draft: { title: 'start' } });
    expect(one.site()).toMatchObject({ server: { store: other.id }, waits: false });
  });

  it('with the same id and another state is a conflict, even where the number fits', async () => {
    await shared();
    const other = memoryServer();
    other.sites.change(ID, { base: { revision: null }, draft: { title: 'elsewhere' } });
    one.server = other;
    await one.sync();
    expect(one.site()).toMatchObject({ draft: { title: 'start' }, conflict: { draft: { title: 'elsewhere' } } });
    expect(other.sites.read(ID)).toMatchObject({ revision: 1, draft: { title: 'elsewhere' } });
  });

  it('with the same id and the same state is taken as the server', async () => {
    await shared();
    const other = memoryServer();
    other.sites.change(ID, { base: { revision: null }, draft: { title: 'start' } });
    one.server = other;
    await one.sync();
    expect(one.site()).toMatchObject({ conflict: null, waits: false, server: { store: other.id, revision: 1 } });
  });
});

test('whatever two people do, nothing that somebody saved goes away unasked, and in the end all have the same', async () => {
  const who = fc.integer({ min: 0, max: 1 });
  const which = fc.integer({ min: 0, max: 1 });
  const act = fc.constantFrom('save', 'remove', 'none');
  const step = fc.oneof(
    fc.record({ kind: fc.constant('save' as const), who, which }),
    fc.record({ kind: fc.constant('remove' as const), who, which }),
    fc.record({ kind: fc.constant('sync' as const), who, which, act }),
    fc.record({
      kind: fc.constant('decide' as const),
      who,
      which,
      choice: fc.constantFrom('mine' as const, 'theirs' as const),
    }),
    fc.record({ kind: fc.constant('swap' as const) }),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 40 }), async (steps) => {
      let place = memoryServer();
      const browsers = [new Browser(place), new Browser(place)];
      let count = 0;
      /** Titles that must be found somewhere, by the site. */
      const owed = new Map<string, Set<string>>([
        [siteId(0), new Set()],
        [siteId(1), new Set()],
      ]);
      const release = (browser: Browser, id: string) => {
        const title = String(browser.site(id)?.draft['title']);
        // What the server or another browser has is theirs.
        if (!isOnServer(id, title)) owed.get(id)?.delete(title);
      };
      const isOnServer = (id: string, title: string) =>
        place.sites
          .revisions(id)
          .some(({ revision }) => place.sites.revision(id, revision)?.draft?.['title'] === title);
      const isHere = (id: string, title: string) =>
        browsers.some((browser) => {
          const site = browser.site(id);
          const drafts: (Draft | null | undefined)[] = [site?.deleted ? null : site?.draft, site?.conflict?.draft];
          return drafts.some((draft) => draft?.['title'] === title);
        });
      const save = async (browser: Browser, id: string) => {
        release(browser, id);
        count += 1;
        owed.get(id)?.add(`state ${count}`);
        await browser.save(`state ${count}`, id);
      };
      const remove = async (browser: Browser, id: string) => {
        release(browser, id);
        await browser.remove(id);
      };

      for (const now of steps) {
        if (now.kind === 'swap') {
          place = memoryServer();
          for (const browser of browsers) browser.server = place;
          for (const [id, titles] of owed) {
            // What only the former store had is lost with it.
            const kept = browsers.map((browser) => (browser.site(id)?.deleted ? '' : browser.site(id)?.draft['title']));
            for (const title of titles) if (!kept.includes(title)) titles.delete(title);
          }
          continue;
        }
        const browser = browsers[now.who] as Browser;
        const id = siteId(now.which);
        if (now.kind === 'save') await save(browser, id);
        else if (now.kind === 'remove') await remove(browser, id);
        else if (now.kind === 'decide') {
          if (!browser.site(id)?.conflict) continue;
          if (now.choice === 'theirs') release(browser, id);
          await browser.decide(now.choice, id);
        } else {
          const { act: acted } = now;
          place.meanwhile = () =>
            acted === 'save' ? save(browser, id) : acted === 'remove' ? remove(browser, id) : null;
          await browser.sync();
          place.meanwhile = null;
        }
        for (const [site, titles] of owed) {
          for (const title of titles) {
            if (!isHere(site, title) && !isOnServer(site, title)) throw new Error(`${title} of ${site} is lost`);
          }
        }
      }

      for (let round = 0; round < 6; round += 1) {
        for (const browser of browsers) {
          await browser.sync();
          for (const { id } of inConflict([...browser.shelf.sites.values()])) await browser.decide('mine', id);
          await browser.sync();
        }
      }
      for (const browser of browsers) {
        for (const id of owed.keys()) {
          const site = browser.site(id);
          expect(site?.deleted === false ? site.draft : null).toEqual(place.sites.read(id)?.draft ?? null);
          expect(site?.conflict ?? null).toBeNull();
        }
      }
    }),
    { numRuns: 300 },
  );
});
