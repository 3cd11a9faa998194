/** Opens a row in the view of one site, by the page's own kind of link. The site that was there can be had back with Undo. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { siteLinkFragment } from '../site/link-codec.ts';
import { askSite } from './api.ts';
import { refusedBy } from './refusal.tsx';

interface OpenSiteProps {
  readonly id: string;
  readonly row: number;
  readonly name: string;
  readonly children: ComponentChildren;
}

export function OpenSite({ id, row, name, children }: OpenSiteProps) {
  const [failure, setFailure] = useState('');
  const open = async () => {
    setFailure('');
    try {
      location.assign(`#${siteLinkFragment(await askSite(id, row))}`);
    } catch (error) {
      setFailure(refusedBy(error).message);
    }
  };
  return (
    <>
      <button type="button" aria-label={`Open ${name} as a site`} onClick={open}>
        {children}
      </button>
      {failure !== '' && <span role="alert">{failure}</span>}
    </>
  );
}
