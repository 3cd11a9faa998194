/** The sun's paths over the year before what stands in the sky: a picture, a list in words, and a table. */
import { useId, useMemo } from 'preact/hooks';
import {
  compassPoint,
  formatQuantity,
  SUNSHINE,
  SUNSHINE_ORIGIN,
  type SunPath,
  type UnitSystem,
} from '../../../model/index.ts';
import { type PlaceClock, placeClock } from '../place-clock.ts';
import { hoursText } from '../words.ts';
import { dayAndMonth } from './day-and-month.ts';
import { KeySign } from './key-sign.tsx';
import { hiddenBy, hiderOf, litSpans } from './lit-times.ts';
import { Patterns, Swatch } from './patterns.tsx';
import { showsAnywhere } from './sky-chart.ts';
import { SkyPicture } from './sky-picture.tsx';
import { listed, type Thing, thingOf, thingsAround, thingWords } from './things.ts';
import type { WallView } from './use-pictures.ts';
import { useWidth } from './use-width.ts';

export function SunDiagramPicture({ view, units }: { view: WallView; units: UnitSystem }) {
  const { diagram, plan } = view;
  const id = useId();
  const { ref, widthPx } = useWidth();
  const clock = placeClock(diagram.timeZone);
  const things = useMemo(() => thingsAround(diagram, plan), [diagram, plan]);
  const seen = useMemo(() => {
    const { silhouettes } = diagram;
    const shown = silhouettes.filter((one) => showsAnywhere(one, (place) => hiderOf(place, silhouettes) === one));
    return things.filter((thing) => shown.some((silhouette) => thingOf([thing], silhouette)));
  }, [diagram, things]);
  const facing = `${compassPoint(diagram.wallAzimuthDeg)}, ${formatQuantity('bearing', diagram.wallAzimuthDeg, units)}`;
  const words = diagram.paths.toReversed().map((path) => ({
    path,
    date: pathDate(path, units),
    text: pathWords({ path, clock, things, silhouettes: diagram.silhouettes }),
  }));
  return (
    <section class="picture sun-diagram" aria-labelledby={`${id}-heading`}>
      <h3 id={`${id}-heading`}>The sun over the year, seen from the box</h3>
      <div ref={ref}>
        <SkyPicture
          diagram={diagram}
          things={things}
          widthPx={widthPx}
          patterns={<Patterns prefix={id} things={things} />}
          prefix={id}
          units={units}
          title={`Sun diagram of wall ${diagram.wall}, which faces ${facing}`}
          description={words.map(({ date, text }) => `${date}: ${text}`).join(' ')}
        />
      </div>
      <ul class="picture-key">
        {seen.map((thing) => (
          <li key={thing.letter}>
            <Swatch prefix={id} thing={thing} /> {thingWords(thing)}
          </li>
        ))}
        {LINES.map(({ name, text }) => (
          <li key={name}>
            <KeySign>
              <path class={`sun-path ${name}`} d="M1 12H35" />
            </KeySign>
            {text}
          </li>
        ))}
      </ul>
      <p>
        The wall faces {facing}: the middle of the picture. The thick path with the hours is that of the hot day. Each
        path also holds for a day in the other half of the year. Clock time of the place ({diagram.timeZone}), to ten
        minutes. Here any sun on the box counts, however weak; the hours of cards and day count {SUNSHINE} (
        {SUNSHINE_ORIGIN}).
      </p>
      <ul class="path-words">
        {words.map(({ path, date, text }) => (
          <li key={path.date}>
            <b>{date}:</b> {text}
          </li>
        ))}
      </ul>
      <PathTable paths={diagram.paths} clock={clock} units={units} />
    </section>
  );
}

const LINES = [
  { name: 'sun-most', text: 'sun on the box' },
  { name: 'sun-some', text: 'less than half of it, through leaves or on a part' },
  { name: 'sun-none', text: 'no sun on the box' },
] as const;

function pathDate({ date, isDesignDay }: SunPath, units: UnitSystem): string {
  return isDesignDay ? `${dayAndMonth(date, units)}, the hot day` : dayAndMonth(date, units);
}

interface PathInWords {
  readonly path: SunPath;
  readonly clock: PlaceClock;
  readonly things: readonly Thing[];
  readonly silhouettes: WallView['diagram']['silhouettes'];
}

/** Shorter than this, something hides the sun only between two points of a path. */
const LEAST_HIDING_H = 0.3;

/** "sun on the box from 06:10 to 11:40, 5.5 h. The wall itself hides it for 6 h." */
function pathWords({ path, clock, things, silhouettes }: PathInWords): string {
  if (path.points.length === 0) return 'the sun does not rise.';
  const spans = spanTexts(path, clock);
  const lit =
    spans.length === 0 ? 'no sun on the box.' : `sun on the box ${listed(spans)}, ${hoursText(path.litHours)}.`;
  const hiding = hiddenBy(path, silhouettes)
    .filter(({ hours }) => hours >= LEAST_HIDING_H)
    .map(({ silhouette, hours }) => `${thingOf(things, silhouette)?.name} for ${hoursText(hours)}`);
  return hiding.length === 0 ? lit : `${lit} Hidden by ${listed(hiding)}.`;
}

function spanTexts(path: SunPath, clock: PlaceClock): string[] {
  return litSpans(path).map(({ from, to }) => `from ${clock.time(from)} to ${endText(to, clock)}`);
}

/** A span that ends with the day ends at 24:00. */
function endText(utc: Date, clock: PlaceClock): string {
  const text = clock.time(utc);
  return text === '00:00' ? '24:00' : text;
}

function PathTable({ paths, clock, units }: { paths: readonly SunPath[]; clock: PlaceClock; units: UnitSystem }) {
  return (
    <details class="hours">
      <summary>The paths in figures</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Sun paths in figures">
        <table>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Sun is up</th>
              <th scope="col">Highest</th>
              <th scope="col">Sun on the box</th>
              <th scope="col">Hours</th>
            </tr>
          </thead>
          <tbody>
            {paths.map((path) => {
              const [first, last] = [path.points[0], path.end ?? path.points.at(-1)];
              const highest = Math.max(0, ...path.points.map(({ elevationDeg }) => elevationDeg));
              const spans = litSpans(path).map(({ from, to }) => `${clock.time(from)} to ${endText(to, clock)}`);
              return (
                <tr key={path.date}>
                  <th scope="row">{pathDate(path, units)}</th>
                  <td>{first && last ? `${clock.time(first.utc)} to ${endText(last.utc, clock)}` : 'not at all'}</td>
                  <td>{formatQuantity('bearing', highest, units)}</td>
                  <td>{spans.join(', ') || 'none'}</td>
                  <td>{path.litHours.toFixed(1)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </details>
  );
}
