/** The revisions of a saved site that the server keeps; each can be opened as a new site. */
import { useEffect, useState } from 'preact/hooks';
import { type Draft, withValue } from '../site/draft.ts';
import { nameOf, type SavedSite, UNTITLED } from './saved-site.ts';
import { ServerFailure, type ServerSummary } from './sync/server-sites.ts';
import { server } from './sync/use-site-sync.ts';
import { when } from './when.ts';

interface SiteHistoryProps {
  readonly site: SavedSite;
  /** Puts a new site in the form; `done` says which. */
  openNew(draft: Draft, done: string): void;
}

export function SiteHistory({ site, openNew }: SiteHistoryProps) {
  const { id } = site;
  const revision = site.server?.revision;
  const [rows, setRows] = useState<readonly ServerSummary[] | null>(null);
  const [trouble, setTrouble] = useState('');
  const name = nameOf(site.draft);

  // Once more after each revision that the server got.
  useEffect(() => {
    let gone = false;
    server.revisions(id).then(
      (found) => {
        if (gone) return;
        setRows(found);
        setTrouble('');
      },
      (error) => {
        if (!gone) setTrouble(troubleWords(error));
      },
    );
    return () => {
      gone = true;
    };
  }, [id, revision]);

  const openRevision = async (row: ServerSummary) => {
    try {
      const state = await server.revision(id, row.revision);
      if (state === null || state.draft === null) {
        setTrouble('The server does not have this revision any more.');
        return;
      }
      const title = `${nameOf(state.draft)} (revision ${row.revision})`;
      setTrouble('');
      openNew(
        withValue(state.draft, 'title', title),
        `Revision ${row.revision} of “${name}” is in the form as a new site; it is not saved.`,
      );
    } catch (error) {
      setTrouble(troubleWords(error));
    }
  };

  return (
    <div class="site-history">
      <p role="status" class={trouble === '' && rows !== null ? 'visually-hidden' : 'site-note'}>
        {trouble || (rows === null ? 'Asking the server …' : '')}
      </p>
      {rows !== null && (
        <ol aria-label={`Revisions of ${name}`} reversed>
          {rows.map((row) => (
            <li key={row.revision} value={row.revision}>
              {row.deleted ? 'deleted' : row.title || UNTITLED}, {when(row.changedAt)}{' '}
              {!row.deleted && (
                <button
                  type="button"
                  class="small-button"
                  aria-label={`Open revision ${row.revision} of ${name} as a copy`}
                  onClick={() => openRevision(row)}
                >
                  Open as a copy
                </button>
              )}
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

function troubleWords(error: unknown): string {
  const why = error instanceof ServerFailure ? error.message : 'something failed';
  return `The revisions cannot be shown: ${why}.`;
}
