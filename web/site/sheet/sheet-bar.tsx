/** Near the verdict: the sheet to take along, and in a line what the day means for who goes to the wall. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { SiteCautions, UnitSystem } from '../../../model/index.ts';
import { useOnline } from '../../offline/use-online.ts';
import { CLIMB_HEADING } from '../before-you-climb.tsx';
import type { Draft } from '../draft.ts';
import { placeClock } from '../place-clock.ts';
import { fetchSheet } from './fetch-sheet.ts';

interface SheetBarProps {
  readonly draft: Draft;
  /** The wall whose day is shown; null where it is the first of the ranking. */
  readonly wall: string | null;
  readonly units: UnitSystem;
  /** Null until there is a result. */
  readonly cautions: SiteCautions | null;
  /** Whether the site of the form can be computed as it stands. */
  readonly ready: boolean;
}

const NO_SERVER = 'No server that makes PDF can be reached. Print this page instead: it holds the same.';

export function SheetBar({ draft, wall, units, cautions, ready }: SheetBarProps) {
  const online = useOnline();
  const [said, setSaid] = useState('');
  const [working, setWorking] = useState(false);
  const [print, setPrint] = useState(false);
  const request = useRef<AbortController | null>(null);
  useEffect(() => () => request.current?.abort(), []);
  // What was said holds for the site as it was.
  useEffect(() => setSaid(''), [draft, units, wall]);

  const make = async () => {
    const asked = new AbortController();
    request.current?.abort();
    request.current = asked;
    setWorking(true);
    setSaid('');
    try {
      const answer = await fetchSheet(
        { draft, wall, units, linkBase: location.href.split('#')[0] ?? '' },
        asked.signal,
      );
      if (answer.kind === 'file') {
        save(answer.blob, answer.name);
        setSaid(`The sheet was saved as ${answer.name}.`);
      } else if (answer.kind === 'noServer') {
        setPrint(true);
        setSaid(NO_SERVER);
      } else setSaid(answer.message);
    } catch {
      setSaid('The sheet was stopped.');
    } finally {
      if (request.current === asked) setWorking(false);
    }
  };

  return (
    <div class="sheet-bar">
      <div class="buttons">
        {online && (
          <button type="button" onClick={make} disabled={!ready || working}>
            Site sheet (PDF)
          </button>
        )}
        {working && (
          <button type="button" class="small-button" onClick={() => request.current?.abort()}>
            Stop
          </button>
        )}
        {(!online || print) && (
          <button type="button" onClick={() => window.print()}>
            Print this page
          </button>
        )}
        {cautions && (
          <button type="button" class="link-button" onClick={goToCautions}>
            {headline(cautions)}
          </button>
        )}
      </div>
      <p role="status" class={said === '' && !working ? 'visually-hidden' : 'files-status'}>
        {working ? 'Making the sheet…' : said}
      </p>
    </div>
  );
}

/** "Before you climb: danger by heat 10:10 to 20:25 at wall “south”" */
function headline({ wall, heat }: SiteCautions): string {
  const clock = placeClock(heat.timeZone);
  const spans = heat.avoid.map(({ fromUtc, toUtc }) => `${clock.time(fromUtc)} to ${clock.time(toUtc)}`).join(', ');
  if (spans !== '') return `Before you climb: stay away from wall “${wall}” ${spans}, heat`;
  return heat.worst === null ? 'Before you climb' : `Before you climb: ${heat.worst} by heat at wall “${wall}”`;
}

function goToCautions() {
  const heading = document.getElementById(CLIMB_HEADING);
  heading?.focus();
  heading?.scrollIntoView({ block: 'start' });
}

function save(blob: Blob, name: string) {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
