/** Points of the skyline, sighted along the edge of the device: where the edge points, and how high. */
import { useState } from 'preact/hooks';
import { compassPoint } from '../../../model/index.ts';
import { conversionText, trueBearing } from './declination.ts';
import { useDeclination } from './use-declination.ts';
import { usePointing } from './use-pointing.ts';

interface InclinometerProps {
  /** A point of the skyline: bearing from true north and elevation, degrees; undefined what the device does not tell. */
  add(bearingDeg: number | undefined, elevationDeg: number): void;
}

export function Inclinometer({ add }: InclinometerProps) {
  const { state, start, stop } = usePointing();
  const active = state.kind === 'waiting' || state.kind === 'reading';
  const { known, failure } = useDeclination(active);
  const [taken, setTaken] = useState('');

  if (!active) {
    return (
      <div class="instrument">
        <button type="button" class="small-button" onClick={start}>
          Sight a point with the device
        </button>
        <p class="field-hint" role="status">
          {state.kind === 'none' ? state.why : taken}
        </p>
      </div>
    );
  }
  const pointing = state.kind === 'reading' ? state.pointing : null;
  const heading = pointing?.headingDeg ?? null;
  const elevation = pointing?.elevationDeg ?? null;
  const bearing =
    heading !== null && known !== null ? trueBearing(Math.round(heading), known.declinationDeg) : undefined;
  const take = () => {
    // A skyline lies at or above the horizontal.
    add(bearing, Math.max(0, Math.round(elevation ?? 0)));
    const how =
      heading === null || known === null
        ? 'Enter its bearing.'
        : conversionText(Math.round(heading), known.declinationDeg);
    setTaken(`Point added. ${how}`);
    stop();
  };
  return (
    <div class="instrument">
      <p class="reading">
        {elevation === null ? 'Waiting for the device …' : `${Math.round(elevation)}° high`}
        {bearing !== undefined && `, bearing ${bearing}° ${compassPoint(bearing)}`}
      </p>
      <p class="field-hint">
        Look along the long edge of the device, from the place of the box, at the top of what stands there. Not at the
        sun. {failure}
      </p>
      <div class="buttons">
        <button type="button" disabled={elevation === null} onClick={take}>
          Take this point
        </button>
        <button type="button" class="small-button" onClick={stop}>
          Leave it
        </button>
      </div>
    </div>
  );
}
