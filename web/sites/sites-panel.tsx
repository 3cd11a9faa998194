/** The saved sites: saving the one in the form, and a list to open, rename and delete. */
import type { UnitSystem } from '../../model/index.ts';
import { askToSignIn } from '../session/session.ts';
import type { DraftState } from '../site/use-draft.ts';
import { ConflictPanel } from './conflict-panel.tsx';
import { nameOf } from './saved-site.ts';
import { SiteList } from './site-list.tsx';
import { syncWords } from './sync/sync-words.ts';
import { useSiteSync } from './sync/use-site-sync.ts';
import { useFocusKeeper } from './use-focus-keeper.ts';
import { useSavedSites } from './use-saved-sites.ts';
import { clock } from './when.ts';

interface SitesPanelProps {
  readonly drafting: DraftState;
  /** What the ranking says of the site in the form; empty or left out where it says nothing. */
  readonly verdict: string | undefined;
  readonly units: UnitSystem;
}

export function SitesPanel({ drafting, verdict, units }: SitesPanelProps) {
  const { copy, kept } = drafting;
  const saved = useSavedSites(drafting, firstSentence(verdict));
  const { all, sites, unsaved, said, clash, conflicts } = saved;
  const status = useSiteSync();
  const focus = useFocusKeeper<HTMLDivElement>();
  const [conflict] = conflicts;
  const isSaved = sites.some(({ id }) => id === copy.id);
  const count = sites.length + unsaved.filter(({ id }) => !sites.some((site) => site.id === id)).length;
  return (
    <div class="sites" ref={focus.holder}>
      <p class="sites-state" data-head tabIndex={-1}>
        <b>{nameOf(copy.draft)}</b>: {stateWords(isSaved, copy.changed)}
        {!kept && ' This browser does not keep what you enter: save it as a file before you close the page.'}
      </p>
      <div class="buttons">
        <button type="button" onClick={saved.save}>
          Save
        </button>
        <button type="button" onClick={saved.saveAsCopy}>
          Save as a copy
        </button>
        {isSaved && copy.changed && (
          <button type="button" onClick={saved.revert}>
            Back to the saved state
          </button>
        )}
      </div>
      {clash && (
        <ConflictPanel
          mine={copy.draft}
          theirs={clash.draft}
          where="elsewhere"
          units={units}
          keepMine={() => saved.resolveClash('mine')}
          keepTheirs={() => saved.resolveClash('theirs')}
          keepBoth={() => saved.resolveClash('both')}
        />
      )}
      <p class="sync-line" aria-live="polite">
        {syncWords(status, all, clock)}
      </p>
      {status.kind === 'locked' && (
        <p>
          <button type="button" class="small-button" onClick={askToSignIn}>
            Sign in
          </button>
        </p>
      )}
      {conflict && (
        <div data-list="conflicts">
          <div data-entry={`conflict-${conflict.id}`} key={conflict.id}>
            <ConflictPanel
              mine={conflict.deleted ? null : conflict.draft}
              theirs={conflict.conflict?.draft ?? null}
              where="on the server"
              since={conflict.conflict?.changedAt ?? ''}
              units={units}
              keepMine={() => saved.decide(conflict, 'mine')}
              keepTheirs={() => saved.decide(conflict, 'theirs')}
              keepBoth={() => saved.decide(conflict, 'both')}
            />
          </div>
        </div>
      )}
      <p role="status" class={said.text === '' ? 'visually-hidden' : 'files-status'}>
        {said.text}{' '}
        {said.back && (
          <button
            type="button"
            class="small-button"
            onClick={() => {
              if (said.id !== undefined) focus.expect(said.id);
              said.back?.();
            }}
          >
            Undo
          </button>
        )}
      </p>
      {count > 0 && (
        <details class="more site-list-fold">
          <summary>
            <span class="summary-text">
              <h3>Saved sites</h3>
              <span class="gist">{count}</span>
            </span>
          </summary>
          <SiteList saved={saved} current={copy.id} store={status.store} />
        </details>
      )}
    </div>
  );
}

function stateWords(isSaved: boolean, changed: boolean): string {
  if (isSaved) return changed ? 'has changes that are not saved.' : 'is saved.';
  return 'is not saved yet. Your entries are kept in this browser all the same.';
}

/** The decision without what explains it. */
function firstSentence(verdict = ''): string {
  return /^.+?[.!?](?=\s+\p{Lu}|$)/u.exec(verdict)?.[0] ?? verdict;
}
