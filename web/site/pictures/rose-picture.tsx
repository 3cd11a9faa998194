/** The peak inside by the way that a bare wall faces: a picture, a sentence, and a table; with its progress. */
import { useId } from 'preact/hooks';
import { compassPoint, formatQuantity, type RosePoint, type UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../words.ts';
import { KeySign } from './key-sign.tsx';
import { extremes, onCurveC } from './rose-chart.ts';
import { MARK, RoseDrawing } from './rose-drawing.tsx';
import type { Pictures, Rose, RoseState } from './use-pictures.ts';
import { useWidth } from './use-width.ts';

export function RosePicture({ pictures, units }: { pictures: Pictures; units: UnitSystem }) {
  const { rose, roseState, cancel, retry } = pictures;
  const id = useId();
  const { ref, widthPx } = useWidth();
  return (
    <section class="picture rose" aria-labelledby={`${id}-heading`} aria-busy={roseState.kind === 'running'}>
      <h3 id={`${id}-heading`}>Every bearing</h3>
      <RoseProgress state={roseState} before={rose !== null} cancel={cancel} retry={retry} />
      <div ref={ref} class={rose === null ? 'rose-room' : ''}>
        {rose && (
          <RoseDrawing
            rose={rose}
            units={units}
            widthPx={widthPx}
            prefix={id}
            title={`Rose of the peak inside by the way that a bare wall built like ${rose.result.day.wall} faces`}
            description={roseWords(rose, units)}
          />
        )}
      </div>
      {rose && <RoseInWords rose={rose} units={units} />}
    </section>
  );
}

interface RoseProgressProps {
  readonly state: RoseState;
  /** Whether an older rose is still shown. */
  readonly before: boolean;
  cancel(): void;
  retry(): void;
}

function RoseProgress({ state, before, cancel, retry }: RoseProgressProps) {
  const old = before ? ' What you see is the rose before the last change.' : '';
  if (state.kind === 'running' && state.slow) {
    return (
      <p class="slow">
        <progress aria-label="bearings done" value={state.done} /> Going round the compass.{old}
        <button type="button" class="small-button" onClick={cancel}>
          Cancel
        </button>
      </p>
    );
  }
  if (state.kind === 'stopped' || state.kind === 'failed') {
    return (
      <p class="slow">
        {state.kind === 'failed' ? `The rose could not be computed: ${state.message}.` : 'The rose was cancelled.'}
        {old}
        <button type="button" class="small-button" onClick={retry}>
          Compute the rose
        </button>
      </p>
    );
  }
  return null;
}

function RoseInWords({ rose, units }: { rose: Rose; units: UnitSystem }) {
  return (
    <>
      <RoseKey rose={rose} />
      <p class="rose-words">{unbroken(roseWords(rose, units))}</p>
      <ul class="rose-walls">
        {rose.result.ranking.walls.map(({ name, azimuthDeg, day }) => {
          const differenceK = day.peakInsideAirC - onCurveC(rose.points, azimuthDeg);
          return (
            <li key={name}>
              <b>{name}</b> ({bearingText(azimuthDeg, units)}):{' '}
              {unbroken(`${temperature(day.peakInsideAirC, units)}, ${differenceText(differenceK, units)}`)}
            </li>
          );
        })}
      </ul>
      <p>
        The curve is for a bare wall built like wall “{rose.result.day.wall}”, without eave, neighbours or skyline. How
        far a wall’s mark lies inside the curve is what its shade does, and what else it has of its own.
      </p>
      <RoseTable points={rose.points} units={units} />
    </>
  );
}

function RoseKey({ rose }: { rose: Rose }) {
  const { refersTo } = rose.result.site.limits;
  return (
    <ul class="picture-key">
      <li>
        <KeySign>
          <path class="rose-curve" d="M2 12H34" />
        </KeySign>
        peak of the air inside, bare wall
      </li>
      <li>
        <KeySign>
          <path class="rose-mark" d={MARK} transform="translate(18 12)" />
        </KeySign>
        a wall of this site, with its shade
      </li>
      {refersTo === 'insideAir' && (
        <li>
          <KeySign>
            <path class="limit-ring" d="M2 12H34" />
          </KeySign>
          the limit for the air inside, where it is near enough
        </li>
      )}
    </ul>
  );
}

/** "Coolest facing N, 0°: 60.1 °C. Hottest facing W, 260°: 72.2 °C. The bearing makes 12.1 K." */
function roseWords({ points }: Rose, units: UnitSystem): string {
  const { coolest, hottest } = extremes(points);
  const spread = formatQuantity('temperatureDifference', hottest.peakInsideAirC - coolest.peakInsideAirC, units);
  return [
    `Coolest facing ${bearingText(coolest.azimuthDeg, units)}: ${temperature(coolest.peakInsideAirC, units)} at the peak.`,
    `Hottest facing ${bearingText(hottest.azimuthDeg, units)}: ${temperature(hottest.peakInsideAirC, units)}.`,
    `The bearing alone makes up to ${spread}.`,
  ].join(' ');
}

function temperature(celsius: number, units: UnitSystem): string {
  return formatQuantity('temperature', celsius, units);
}

function bearingText(azimuthDeg: number, units: UnitSystem): string {
  return `${compassPoint(azimuthDeg)}, ${formatQuantity('bearing', azimuthDeg, units)}`;
}

/** Less than this is the difference between two neighbouring bearings. */
const LEAST_SHOWN_K = 0.3;

function differenceText(differenceK: number, units: UnitSystem): string {
  if (Math.abs(differenceK) < LEAST_SHOWN_K) return 'as the bare wall of this bearing';
  const size = formatQuantity('temperatureDifference', Math.abs(differenceK), units);
  return `${size} ${differenceK < 0 ? 'cooler' : 'hotter'} than the bare wall of this bearing`;
}

function RoseTable({ points, units }: { points: readonly RosePoint[]; units: UnitSystem }) {
  return (
    <details class="hours">
      <summary>The peak for every bearing</summary>
      <table class="rose-table">
        <thead>
          <tr>
            <th scope="col">The wall faces</th>
            <th scope="col">Peak inside</th>
          </tr>
        </thead>
        <tbody>
          {points.map(({ azimuthDeg, peakInsideAirC }) => (
            <tr key={azimuthDeg}>
              <th scope="row">{bearingText(azimuthDeg, units)}</th>
              <td>{temperature(peakInsideAirC, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
