/** The site as a file, and the ways back. */
import { useEffect, useId, useState } from 'preact/hooks';
import { siteFileName } from '../../model/index.ts';
import { type Draft, isDraft, textAt } from './draft.ts';
import { LinkButton } from './link-button.tsx';
import type { DraftState } from './use-draft.ts';

/** A site file of 72 walls with full horizons stays far below this. */
const MAX_FILE_BYTES = 2_000_000;

interface SiteFilesProps extends DraftState {
  /** Why a link that the page was opened with was not taken; empty where it was. */
  readonly refusedLink: string;
}

export function SiteFiles({ draft, replace, backToDemo, undo, refusedLink }: SiteFilesProps) {
  const [refused, setRefused] = useState('');
  useEffect(() => setRefused(refusedLink), [refusedLink]);
  const inputId = useId();

  const open = async (file: File | undefined) => {
    if (!file) return;
    const read = await readSiteFile(file);
    setRefused(read.refused);
    if (read.draft) replace(read.draft, `The site now comes from ${file.name}.`);
  };

  return (
    <div class="site-files">
      <div class="buttons">
        <button type="button" onClick={() => saveAsFile(draft)}>
          Save as a file
        </button>
        <label class="button" for={inputId}>
          Open a file
          <input
            id={inputId}
            type="file"
            accept=".json,application/json"
            onChange={async ({ currentTarget }) => {
              await open(currentTarget.files?.[0]);
              // The same file can be chosen again after it was corrected.
              currentTarget.value = '';
            }}
          />
        </label>
        <LinkButton draft={draft} refuse={setRefused} />
        <button
          type="button"
          onClick={() => {
            setRefused('');
            backToDemo();
          }}
        >
          Back to the demo site
        </button>
      </div>
      <p role="status" class="files-status">
        {refused || undo?.done}{' '}
        {undo && (
          <button type="button" class="small-button" onClick={undo.back}>
            Undo
          </button>
        )}
      </p>
    </div>
  );
}

async function readSiteFile(file: File): Promise<{ draft: Draft | null; refused: string }> {
  const refuse = (why: string) => ({ draft: null, refused: `${file.name} was not opened: ${why}` });
  if (file.size > MAX_FILE_BYTES) return refuse('it is larger than 2 MB, too large for a site.');
  try {
    const value: unknown = JSON.parse(await file.text());
    return isDraft(value) ? { draft: value, refused: '' } : refuse('it holds no site.');
  } catch (error) {
    return refuse(`its text is not that of a saved site (${error instanceof Error ? error.message : 'unreadable'}).`);
  }
}

function saveAsFile(draft: Draft) {
  const address = URL.createObjectURL(new Blob([`${JSON.stringify(draft, null, 2)}\n`], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `${siteFileName(textAt(draft, 'title'))}.json`;
  link.click();
  URL.revokeObjectURL(address);
}
