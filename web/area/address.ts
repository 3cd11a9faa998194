/** Addresses of this view: "#/area", and "#/area/ID" for a screening, so that a reload finds it again. */
import { useEffect, useState } from 'preact/hooks';

const START = '#/area';

/** The screening that an address is about; null for the start. */
export function screeningAt(hash: string): string | null {
  return /^#\/area\/([\w-]{1,80})$/.exec(hash)?.[1] ?? null;
}

export const screeningAddress = (id: string): string => `${START}/${id}`;

export const goTo = (id: string | null): void => location.assign(id === null ? START : screeningAddress(id));

export function useScreeningAddress(): string | null {
  const [id, setId] = useState(() => screeningAt(location.hash));
  useEffect(() => {
    const follow = () => setId(screeningAt(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return id;
}
