/**
 * Ways to a bearing for a person at the wall: the figure of a magnetic compass, the device's own compass, or the sun. They
 * write a true bearing, and say how they came to it.
 */
import { useId, useState } from 'preact/hooks';
import { compassPoint, readNumberText, sunPosition } from '../../../model/index.ts';
import { useForm } from '../form/form-context.ts';
import { NumberEntry } from '../form/number-entry.tsx';
import { conversionText, trueBearing } from './declination.ts';
import { useMagneticPlace } from './magnetic-place.ts';
import { useDeclination } from './use-declination.ts';
import { usePointing } from './use-pointing.ts';

interface CompassProps {
  /** What the bearing is a bearing of, as the end of "Take …": "it with a compass or by the sun". */
  readonly title?: string;
  /** How to hold the device for this bearing. */
  readonly how: string;
  onBearing(trueDeg: number): void;
}

export function Compass({ title = 'Take it with a compass or by the sun', how, onBearing }: CompassProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="more field-wide compass" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{title}</summary>
      {open && <CompassFields how={how} onBearing={onBearing} />}
    </details>
  );
}

function CompassFields({ how, onBearing }: Pick<CompassProps, 'how' | 'onBearing'>) {
  const { units } = useForm();
  const id = useId();
  const [magnetic, setMagnetic] = useState<number | string | undefined>(undefined);
  const { known, failure } = useDeclination(true);
  const { state, start, stop } = usePointing();

  const take = (value: number | string | undefined) => {
    setMagnetic(value);
    const read = typeof value === 'string' ? readNumberText(value, 'bearing') : value;
    if (known && typeof read === 'number' && isBearing(read)) onBearing(trueBearing(read, known.declinationDeg));
  };
  const number = typeof magnetic === 'string' ? readNumberText(magnetic, 'bearing') : magnetic;
  const refused = magnetic !== undefined && !isBearing(number);
  const heading = state.kind === 'reading' ? state.pointing.headingDeg : null;
  return (
    <div class="section-fields">
      <NumberEntry
        id={`${id}-magnetic`}
        label="bearing on a magnetic compass"
        kind="bearing"
        units={units}
        value={magnetic}
        disabled={known === null}
        problems={refused ? [NOT_READ] : []}
        hint="The bearing from true north above follows."
        onValue={take}
      />
      <p class="field-wide conversion" role="status">
        {failure}
        {known && typeof number === 'number' && isBearing(number) && (
          <>
            <b>{conversionText(number, known.declinationDeg)}</b> ({known.origin}, today)
          </>
        )}
        {known?.weak && ' So near the magnetic pole a compass can hardly be relied on: use the sun.'}
      </p>
      <div class="field-wide instrument">
        {state.kind === 'off' || state.kind === 'none' ? (
          <button type="button" disabled={known === null} onClick={start}>
            Read the device’s compass
          </button>
        ) : (
          <>
            <p class="reading">
              {heading === null
                ? 'Waiting for the compass …'
                : `${Math.round(heading)}° ${compassPoint(heading)} magnetic`}
            </p>
            <div class="buttons">
              <button
                type="button"
                disabled={heading === null}
                onClick={() => {
                  take(Math.round(heading ?? 0));
                  stop();
                }}
              >
                Take this bearing
              </button>
              <button type="button" class="small-button" onClick={stop}>
                Leave it
              </button>
            </div>
          </>
        )}
        <p class="field-hint">
          {state.kind === 'none' ? state.why : `${how} Keep clear of iron: cars, meters, reinforced walls.`}
        </p>
        <p class="field-hint">Devices count from magnetic north, which is common practice; the declination is added.</p>
      </div>
      <SunCheck onBearing={onBearing} />
    </div>
  );
}

/** The sun tells true north without any iron in the way. */
function SunCheck({ onBearing }: Pick<CompassProps, 'onBearing'>) {
  const place = useMagneticPlace();
  const [now, setNow] = useState<Date | null>(null);
  const sun = now && place ? sunPosition(now, place.latitudeDeg, place.longitudeDeg) : null;
  const bearing = sun && Math.round(sun.azimuthDeg * 10) / 10;
  return (
    <div class="field-wide instrument">
      <button type="button" disabled={place === null} onClick={() => setNow(new Date())}>
        Compare with the sun
      </button>
      {sun !== null && bearing !== null && (
        <>
          <p role="status">
            {sun.elevationDeg > 0
              ? `The sun now stands at bearing ${bearing}° (${compassPoint(bearing)}), ${Math.round(sun.elevationDeg)}° high.`
              : 'The sun is below the horizon now.'}
          </p>
          {sun.elevationDeg > 0 && (
            <>
              <p class="field-hint">
                Where your shadow falls straight onto the wall, the wall faces the sun. Watch the shadow: never look
                into the sun.
              </p>
              <button type="button" class="small-button" onClick={() => onBearing(bearing)}>
                It faces the sun now: {bearing}°
              </button>
            </>
          )}
        </>
      )}
    </div>
  );
}

const NOT_READ = {
  path: 'magnetic',
  subject: 'magnetic bearing',
  text: 'no bearing: degrees from 0 to 360 or a compass point',
  allowed: '',
};

function isBearing(value: number | null | undefined): value is number {
  return typeof value === 'number' && value >= 0 && value <= 360;
}
