/** Opens the site of a link: puts it in the form, with the way back, and takes it out of the address. */
import { useEffect, useState } from 'preact/hooks';
import { holdsSite } from '../../model/index.ts';
import type { DraftState } from './use-draft.ts';

/** Where the view stands once the site of a link is in the form: a reload must not put it over later edits. */
const PLAIN_ADDRESS = '#/site';

/** Follows the address; gives back why the last link was not taken, or nothing. */
export function useSiteLink({ draft, replace }: Pick<DraftState, 'draft' | 'replace'>): string {
  const [hash, setHash] = useState(location.hash);
  const [refused, setRefused] = useState('');

  useEffect(() => {
    const follow = () => setHash(location.hash);
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);

  useEffect(() => {
    if (!holdsSite(hash)) return;
    let gone = false;
    openLink(hash)
      .then((site) => {
        if (gone) return;
        setRefused('');
        if (JSON.stringify(site) !== JSON.stringify(draft)) replace(site, 'The site now comes from a link.');
      })
      .catch((error: unknown) => {
        if (!gone) setRefused(error instanceof Error ? error.message : String(error));
      })
      .finally(() => {
        if (gone) return;
        history.replaceState(null, '', PLAIN_ADDRESS);
        setHash(PLAIN_ADDRESS);
      });
    return () => {
      gone = true;
    };
    // The draft of the moment the link is opened is the one that it is compared with.
  }, [hash, replace]);

  return refused;
}

async function openLink(hash: string) {
  const { siteOfLink } = await import('./link-codec.ts').catch(() => {
    throw new Error('The link could not be opened without a connection. Try again when connected.');
  });
  return siteOfLink(hash);
}
