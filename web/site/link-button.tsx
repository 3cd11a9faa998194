/** Makes a link that holds the site of the form: it opens on any machine, and no server keeps anything. */
import { useEffect, useId, useState } from 'preact/hooks';
import type { Draft } from './draft.ts';

interface LinkButtonProps {
  readonly draft: Draft;
  /** Says why there is no link. */
  refuse(why: string): void;
}

export function LinkButton({ draft, refuse }: LinkButtonProps) {
  const [link, setLink] = useState<{ address: string; copied: boolean } | null>(null);
  const id = useId();
  // A link holds the site as it was: after a change it would be out of date.
  useEffect(() => setLink(null), [draft]);

  const make = async () => {
    refuse('');
    try {
      const address = await linkTo(draft);
      setLink({ address, copied: await copy(address) });
    } catch (error) {
      refuse(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <button type="button" onClick={make}>
        Copy a link
      </button>
      {link && (
        <div class="link-made">
          <label for={id}>
            {link.copied ? 'The link is copied' : 'Copy this link'}: it holds the whole site, and whoever has it can
            read it
          </label>
          <input
            id={id}
            class="link-address"
            type="text"
            readOnly
            value={link.address}
            onFocus={({ currentTarget }) => currentTarget.select()}
          />
        </div>
      )}
    </>
  );
}

async function linkTo(draft: Draft): Promise<string> {
  const { siteLinkFragment } = await import('./link-codec.ts').catch(() => {
    throw new Error('Links cannot be made without a connection. Save the site as a file.');
  });
  return `${location.href.split('#')[0]}#${siteLinkFragment(draft)}`;
}

/** Whether the browser lets the page write to its clipboard; over plain HTTP it does not. */
async function copy(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
