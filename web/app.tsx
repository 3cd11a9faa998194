/** The frame around every view: name, navigation, theme, units. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { UnitSystem } from '../model/index.ts';
import { focusWhereLost } from './lost-focus.ts';
import { OfflineNotice } from './offline/offline-notice.tsx';
import { SignIn } from './session/sign-in.tsx';
import { storedUnits, storeUnits } from './site/storage.ts';
import { ThemeSwitch } from './theme-switch.tsx';
import { Tour } from './tour/tour.tsx';
import { UnitsSwitch } from './units-switch.tsx';
import { VIEWS, viewAt } from './views.ts';

export function App() {
  const view = useHashView();
  const [chosenUnits, setChosenUnits] = useState<UnitSystem | null>(storedUnits);
  const [shownUnits, setShownUnits] = useState<UnitSystem>(chosenUnits ?? 'metric');

  const choose = useCallback((units: UnitSystem) => {
    storeUnits(units);
    setChosenUnits(units);
  }, []);

  return (
    <>
      <header class="page-head">
        <p class="page-name">
          <img src="./favicon.svg" alt="" width="32" height="32" /> Shadeside
        </p>
        {VIEWS.length > 1 && (
          <nav aria-label="Views">
            <ul class="page-nav">
              {VIEWS.map(({ hash, label }) => (
                <li key={hash}>
                  <a href={hash} aria-current={hash === view.hash ? 'page' : undefined}>
                    {label}
                  </a>
                </li>
              ))}
            </ul>
          </nav>
        )}
        <Tour />
        <ThemeSwitch />
        <UnitsSwitch units={chosenUnits ?? shownUnits} onChoose={choose} />
      </header>
      <OfflineNotice />
      <SignIn />
      <view.Component chosenUnits={chosenUnits} onUnits={setShownUnits} />
    </>
  );
}

function useHashView() {
  const [view, setView] = useState(() => viewAt(location.hash));
  useEffect(() => {
    const follow = () => {
      setView(viewAt(location.hash));
      focusWhereLost();
    };
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return view;
}
