import { useState } from 'preact/hooks';
import { nameOf, type SavedSite } from './saved-site.ts';
import { SiteHistory } from './site-history.tsx';
import type { SavedSites } from './use-saved-sites.ts';
import { when } from './when.ts';
import type { WorkingCopy } from './working-copies.ts';

interface SiteListProps {
  readonly saved: SavedSites;
  /** Id of the site in the form. */
  readonly current: string;
  /** Name of the server's store; null where none can be asked. */
  readonly store: string | null;
}

/** Saved sites and edits that were left unsaved, each with what can be done with it. */
export function SiteList({ saved, current, store }: SiteListProps) {
  const { sites, unsaved } = saved;
  const neverSaved = unsaved.filter(({ id }) => !sites.some((site) => site.id === id));
  return (
    <ul class="site-list" data-list="sites">
      {neverSaved.map((copy) => (
        <UnsavedEntry key={copy.id} copy={copy} saved={saved} />
      ))}
      {sites.map((site) => (
        <SavedEntry
          key={site.id}
          site={site}
          saved={saved}
          isCurrent={site.id === current}
          hasHistory={site.server !== null && site.server.store === store}
          edits={unsaved.some(({ id }) => id === site.id)}
        />
      ))}
    </ul>
  );
}

function UnsavedEntry({ copy, saved }: { copy: WorkingCopy; saved: SavedSites }) {
  const name = nameOf(copy.draft);
  return (
    <li data-entry={copy.id}>
      <p class="site-name" data-home tabIndex={-1}>
        {name}
      </p>
      <p class="site-note">Not saved; edited {when(copy.editedAt)}.</p>
      <div class="buttons">
        <button type="button" class="small-button" aria-label={`Open ${name}`} onClick={() => saved.open(copy.id)}>
          Open
        </button>
        <button
          type="button"
          class="small-button"
          aria-label={`Give up the edits of ${name}`}
          onClick={() => saved.discard(copy.id)}
        >
          Give up
        </button>
      </div>
    </li>
  );
}

interface SavedEntryProps {
  readonly site: SavedSite;
  readonly saved: SavedSites;
  readonly isCurrent: boolean;
  /** Whether the server can be asked for its revisions. */
  readonly hasHistory: boolean;
  /** Whether edits of it were left unsaved. */
  readonly edits: boolean;
}

function SavedEntry({ site, saved, isCurrent, hasHistory, edits }: SavedEntryProps) {
  const [isUnfolded, setIsUnfolded] = useState(false);
  const [title, setTitle] = useState<string | null>(null);
  const name = nameOf(site.draft);
  const inputId = `rename-${site.id}`;
  return (
    <li aria-current={isCurrent ? 'true' : undefined} data-entry={site.id}>
      <p class="site-name" data-home tabIndex={-1}>
        {name} {isCurrent && <span class="site-here">– in the form</span>}
      </p>
      <p class="site-note">
        Saved {when(site.changedAt)}.{edits && ' It has edits that are not saved.'} {site.verdict}
      </p>
      {title === null ? (
        <div class="buttons">
          {!isCurrent && (
            <button type="button" class="small-button" aria-label={`Open ${name}`} onClick={() => saved.open(site.id)}>
              Open
            </button>
          )}
          <button type="button" class="small-button" aria-label={`Rename ${name}`} onClick={() => setTitle(name)}>
            Rename
          </button>
          <button
            type="button"
            class="small-button"
            aria-label={`Delete ${name}`}
            onClick={() => saved.remove(site.id)}
          >
            Delete
          </button>
          {hasHistory && (
            <button
              type="button"
              class="small-button"
              aria-label={`Revisions of ${name}`}
              aria-expanded={isUnfolded}
              onClick={() => setIsUnfolded(!isUnfolded)}
            >
              Revisions
            </button>
          )}
        </div>
      ) : (
        <form
          class="site-rename field"
          onSubmit={(event) => {
            event.preventDefault();
            if (title.trim() !== '') saved.rename(site.id, title.trim());
            setTitle(null);
          }}
        >
          <label for={inputId}>New name</label>
          <input
            id={inputId}
            type="text"
            value={title}
            ref={(input) => input?.focus()}
            onInput={({ currentTarget }) => setTitle(currentTarget.value)}
          />
          <div class="buttons">
            <button type="submit" class="small-button">
              Rename
            </button>
            <button type="button" class="small-button" onClick={() => setTitle(null)}>
              Leave
            </button>
          </div>
        </form>
      )}
      {hasHistory && isUnfolded && <SiteHistory site={site} openNew={saved.openNew} />}
    </li>
  );
}
