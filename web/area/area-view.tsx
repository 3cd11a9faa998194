/** A region: which of many addresses get too hot, on which walls, and what goes on the truck. */
import { useEffect, useState } from 'preact/hooks';
import { usualUnits } from '../../model/index.ts';
import { onSignedIn } from '../session/session.ts';
import type { ViewProps } from '../view-props.ts';
import { goTo, useScreeningAddress } from './address.ts';
import { storageThere, type Table } from './api.ts';
import { MatchingPanel } from './matching-panel.tsx';
import { ScreeningPanel } from './screening-panel.tsx';
import { StartPanel } from './start-panel.tsx';
import '../styles/area.css';

/** Whether the server can keep tables and results. */
type Server = 'asking' | 'ready' | 'keepsNothing' | 'unreachable';

export function AreaView({ chosenUnits, onUnits }: ViewProps) {
  const units = chosenUnits ?? usualUnits(Intl.DateTimeFormat().resolvedOptions().timeZone);
  useEffect(() => onUnits(units), [units, onUnits]);
  const id = useScreeningAddress();
  const { server, again } = useServer();
  const [table, setTable] = useState<Table | null>(null);
  useEffect(() => {
    if (id !== null) setTable(null);
  }, [id]);
  // What was refused before somebody signed in is asked for anew.
  const [visit, setVisit] = useState(0);
  useEffect(() => onSignedIn(() => setVisit((count) => count + 1)), []);

  return (
    <main class="area-view">
      <h1>A region</h1>
      <p class="area-lead">
        A list of addresses, or a grid over a map, judged one by one as a site is: which boxes get too hot, on which
        walls, and what to bring. What you upload stays on the server that this page comes from.
      </p>
      {server === 'keepsNothing' && (
        <p class="area-notice" role="status">
          This server keeps nothing, so it cannot screen a region: it was started without a data folder. Whoever runs it
          can start it with <code>--data FOLDER</code>. A single site works without.
        </p>
      )}
      {server === 'unreachable' && (
        <p class="area-notice" role="alert">
          The server cannot be reached, and a region is screened there. A single site works without it.{' '}
          <button type="button" class="small-button" onClick={again}>
            Try again
          </button>
        </p>
      )}
      {server === 'asking' && <p role="status">Asking the server …</p>}
      {server === 'ready' &&
        (id !== null ? (
          <ScreeningPanel key={`${id} ${visit}`} id={id} units={units} />
        ) : table !== null ? (
          <MatchingPanel key={table.table} table={table} leave={() => setTable(null)} started={goTo} />
        ) : (
          <StartPanel key={visit} units={units} uploaded={setTable} started={goTo} />
        ))}
    </main>
  );
}

function useServer(): { readonly server: Server; again(): void } {
  const [server, setServer] = useState<Server>('asking');
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let gone = false;
    storageThere().then(
      (there) => !gone && setServer(there ? 'ready' : 'keepsNothing'),
      () => !gone && setServer('unreachable'),
    );
    return () => {
      gone = true;
    };
  }, [turn]);
  return {
    server,
    again() {
      setServer('asking');
      setTurn(turn + 1);
    },
  };
}
