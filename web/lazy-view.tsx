/** A view whose code comes only when it is opened, so that the first page stays small. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { ViewProps } from './view-props.ts';

type Loaded = { readonly Component: ComponentType<ViewProps> } | { readonly failed: true };

/** A component that loads the one it stands for; says so meanwhile, and offers another try where that fails. */
export function lazyView(load: () => Promise<ComponentType<ViewProps>>): ComponentType<ViewProps> {
  return function LazyView(props: ViewProps) {
    const [loaded, setLoaded] = useState<Loaded | null>(null);
    const [attempt, setAttempt] = useState(0);

    useEffect(() => {
      let gone = false;
      load().then(
        (Component) => !gone && setLoaded({ Component }),
        () => !gone && setLoaded({ failed: true }),
      );
      return () => {
        gone = true;
      };
    }, [attempt]);

    if (loaded !== null && 'Component' in loaded) return <loaded.Component {...props} />;
    if (loaded === null) return <p role="status">Loading …</p>;
    return (
      <p role="alert">
        This part could not be loaded.{' '}
        <button
          type="button"
          onClick={() => {
            setLoaded(null);
            setAttempt(attempt + 1);
          }}
        >
          Try again
        </button>
      </p>
    );
  };
}
