/** Takes the place from the device, with how exact it is. */
import { useRef, useState } from 'preact/hooks';
import { formatQuantity, type UnitSystem } from '../../../model/index.ts';
import { type Draft, isDraft, valueAt } from '../draft.ts';
import { type DevicePlace, NO_LOCATION, placeFrom, whyNot } from '../instruments/device-place.ts';
import { useForm } from './form-context.ts';

type State =
  | { readonly kind: 'idle' }
  | { readonly kind: 'asking' }
  | { readonly kind: 'found'; readonly place: DevicePlace }
  | { readonly kind: 'none'; readonly why: string };

/** A position may be as old as this, and may take as long, ms: nobody walks far meanwhile. */
const FRESH_MS = 60_000;
const PATIENCE_MS = 20_000;

export function DeviceLocation() {
  const { draft, units, set } = useForm();
  const [state, setState] = useState<State>({ kind: 'idle' });
  // An answer that comes after somebody gave up on it is dropped.
  const asked = useRef(0);
  const latest = useRef(draft);
  latest.current = draft;

  const ask = () => {
    asked.current += 1;
    const own = asked.current;
    if (!('geolocation' in navigator) || !isSecureContext) {
      setState({ kind: 'none', why: NO_LOCATION });
      return;
    }
    setState({ kind: 'asking' });
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        if (own !== asked.current) return;
        const place = placeFrom(coords);
        setState({ kind: 'found', place });
        set('place', placed(latest.current, place), 'The place now comes from the device.');
      },
      ({ code }) => {
        if (own === asked.current) setState({ kind: 'none', why: whyNot(code) });
      },
      { enableHighAccuracy: true, maximumAge: FRESH_MS, timeout: PATIENCE_MS },
    );
  };
  const giveUp = () => {
    asked.current += 1;
    setState({ kind: 'idle' });
  };

  return (
    <div class="field-wide instrument">
      {state.kind === 'asking' ? (
        <p class="slow">
          <progress aria-label="looking for the place" /> Looking for the place …
          <button type="button" class="small-button" onClick={giveUp}>
            Stop looking
          </button>
        </p>
      ) : (
        <button type="button" onClick={ask}>
          Use the place of this device
        </button>
      )}
      <p role="status" class="field-hint">
        {state.kind === 'none' && state.why}
        {state.kind === 'found' &&
          foundText(state.place, formatQuantity('length', state.place.accuracyM, units), units)}
      </p>
    </div>
  );
}

/** The former zone and altitude belong to the former place. */
function placed(draft: Draft, { latitudeDeg, longitudeDeg, altitudeM }: DevicePlace): Draft {
  const before = valueAt(draft, 'place');
  const { timeZone: _zone, altitudeM: _altitude, ...rest } = isDraft(before) ? before : {};
  return { ...rest, latitudeDeg, longitudeDeg, ...(altitudeM === null ? {} : { altitudeM }) };
}

function foundText({ altitudeM }: DevicePlace, accuracy: string, units: UnitSystem): string {
  const altitude = altitudeM === null ? ' The device gave no altitude: enter it where it is more than a hill.' : '';
  return `Found, to within ${accuracy}. For the sun a ${units === 'us' ? 'mile' : 'kilometre'} would do.${altitude}`;
}
