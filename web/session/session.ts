/**
 * The way to the API of the server that this page came from. Where that asks for a token, the frame of the page shows a form for it;
 * what needs no server goes on meanwhile.
 */

type Listener = () => void;
/** Who asks: the server, by refusing something, or the person, who then expects to type. */
type Asker = 'server' | 'person';

const onAsked = new Set<(asker: Asker) => void>();
const onBegun = new Set<Listener>();

/** As `fetch`, for addresses below "./api/". A 401 brings up the form to sign in; it is given back like any other answer. */
export async function apiFetch(address: string, init?: RequestInit): Promise<Response> {
  const response = await fetch(address, init);
  if (response.status === 401) for (const listener of onAsked) listener('server');
  return response;
}

/** Brings up the form, for a person who put it away or does not see it. */
export function askToSignIn(): void {
  for (const listener of onAsked) listener('person');
}

/** Calls back whenever a token is asked for; gives back how to stop that. */
export function onSignInAsked(listener: (asker: Asker) => void): () => void {
  onAsked.add(listener);
  return () => onAsked.delete(listener);
}

/** Calls back once a person signed in, so that what was refused can be asked for again; gives back how to stop that. */
export function onSignedIn(listener: Listener): () => void {
  onBegun.add(listener);
  return () => onBegun.delete(listener);
}

/** Hands the token to the server, which keeps it in a cookie that no script sees. Gives back what went wrong, or null. */
export async function signIn(token: string): Promise<string | null> {
  try {
    const response = await fetch('./api/session', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ token }),
    });
    if (response.status === 429) return 'Too many wrong tokens came from here. Wait a while, then try again.';
    if (response.status === 401 || response.status === 400) return 'The server does not know this token.';
    if (!response.ok) return `The server could not do that (${response.status}). Try again later.`;
  } catch {
    return 'The server cannot be reached.';
  }
  for (const listener of onBegun) listener();
  return null;
}
