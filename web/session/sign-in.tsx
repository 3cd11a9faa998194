/** The form that comes up when the server asks for a token. Whoever only reckons in the page may put it away. */
import { useEffect, useState } from 'preact/hooks';
import { onSignInAsked, signIn } from './session.ts';

export function SignIn() {
  const [asked, setAsked] = useState(false);
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState(false);
  useEffect(() => onSignInAsked(() => setAsked(true)), []);
  if (!asked) return null;

  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    const token = String(new FormData(event.currentTarget as HTMLFormElement).get('token')).trim();
    setBusy(true);
    const wrong = await signIn(token);
    setBusy(false);
    setTrouble(wrong ?? '');
    if (wrong === null) setAsked(false);
  };

  return (
    <form class="sign-in" aria-labelledby="sign-in-title" onSubmit={send}>
      <h2 id="sign-in-title">Sign in to the server</h2>
      <p id="sign-in-why">
        Sites and screenings that are kept on the server need the token that it printed at its first start, or one that
        its keeper made for you. One site is reckoned in this browser without it.
      </p>
      <label>
        Token{' '}
        <input
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
        <button type="button" onClick={() => setAsked(false)}>
          Not now
        </button>
      </div>
      <p id="sign-in-trouble" role="alert">
        {trouble}
      </p>
    </form>
  );
}
