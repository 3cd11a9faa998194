/** The form that comes up when the server asks for a token. Whoever only reckons in the page may put it away. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { onSignInAsked, signIn } from './session.ts';

export function SignIn() {
  const [asked, setAsked] = useState(false);
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState(false);
  // Counts a person's askings: each moves the focus, also where the form is up but out of sight.
  const [wished, setWished] = useState(0);
  const entry = useRef<HTMLInputElement>(null);
  useEffect(
    () =>
      onSignInAsked((asker) => {
        setAsked(true);
        if (asker === 'person') setWished((times) => times + 1);
      }),
    [],
  );
  useEffect(() => {
    if (wished > 0) entry.current?.focus();
  }, [wished]);
  if (!asked) return null;

  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    const token = String(new FormData(event.currentTarget as HTMLFormElement).get('token')).trim();
    setBusy(true);
    // The same words are read out again only where they come anew.
    setTrouble('');
    const wrong = await signIn(token);
    setBusy(false);
    setTrouble(wrong ?? '');
    if (wrong === null) setAsked(false);
  };

  const putAway = () => {
    setTrouble('');
    setAsked(false);
  };

  return (
    <form class="sign-in" aria-labelledby="sign-in-title" onSubmit={send}>
      <h2 id="sign-in-title">Sign in to the server</h2>
      <p id="sign-in-why">
        Sites and screenings that are kept on the server need the token that it printed at its first start, or one that
        its keeper made for you. One site is computed in this browser without it.
      </p>
      <label>
        Token{' '}
        <input
          ref={entry}
          type="password"
          name="token"
          required
          autocomplete="current-password"
          aria-describedby="sign-in-why sign-in-trouble"
        />
      </label>
      <div class="buttons">
        <button type="submit" disabled={busy}>
          Sign in
        </button>
        <button type="button" onClick={putAway}>
          Not now
        </button>
      </div>
      <p id="sign-in-trouble" class="sign-in-trouble" role="alert">
        {trouble}
      </p>
    </form>
  );
}
