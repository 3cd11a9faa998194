/** A map of addresses, or of a box to be drawn: moved by finger, mouse, wheel and keys. */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { UnitSystem } from '../../../model/index.ts';
import { useWidth } from '../../site/pictures/use-width.ts';
import type { Points } from '../api.ts';
import { bandOf, marginBands, NO_WALL } from '../margin-bands.ts';
import { type Box, drawMap } from './draw-map.ts';
import { AT_REST, centred, frameFor, inSight, lonLatAt, panned, placed, type View, zoomed } from './frame.ts';
import { nearestPoint } from './nearest.ts';
import { loadOutlines, type Outlines } from './outlines.ts';
import { useGestures } from './use-gestures.ts';

type Shown = Pick<Points, 'latitudeDeg' | 'longitudeDeg' | 'marginK'>;

interface AreaMapProps {
  /** What it shows, for those who do not see it. */
  readonly label: string;
  readonly points: Shown | null;
  readonly units: UnitSystem;
  readonly selected?: number | null;
  readonly box?: Box | null;
  readonly corner?: readonly [number, number] | null;
  /** A place was pointed at: the point there, if any, and where it lies. */
  onPoint(index: number | null, lonLat: readonly [number, number] | null): void;
  /** What Enter does. */
  readonly enter: string;
}

const BUTTON_FACTOR = 1.6;

export function AreaMap({
  label,
  points,
  units,
  selected = null,
  box = null,
  corner = null,
  onPoint,
  enter,
}: AreaMapProps) {
  const { ref, widthPx } = useWidth();
  const canvas = useRef<HTMLCanvasElement>(null);
  const holder = useRef<HTMLDivElement>(null);
  const [view, setView] = useState<View>(AT_REST);
  const [focused, setFocused] = useState(false);
  const { outlines, failed } = useOutlines();

  const innerPx = widthPx - 2 * BORDER_PX;
  const heightPx = Math.round(Math.min(520, Math.max(points === null ? 180 : 280, innerPx * 0.6)));
  const frame = useMemo(() => frameFor(points, innerPx, heightPx), [points, innerPx, heightPx]);
  const places = useMemo(() => points && placed(frame, points), [frame, points]);
  const { band, order, bands } = useMemo(() => classed(points, units), [points, units]);
  useEffect(() => setView(AT_REST), [innerPx, heightPx]);
  useEffect(() => {
    const at = selected === null || places === null ? null : ([places.x[selected], places.y[selected]] as const);
    if (at?.[0] === undefined || at[1] === undefined) return;
    const [x, y] = [at[0], at[1]];
    // Chosen in a list, it may lie outside what the map shows.
    setView((now) => (inSight(frame, now, [x, y]) ? now : centred(frame, now, [x, y])));
  }, [selected]);

  useLayoutEffect(() => {
    if (canvas.current === null) return;
    const ratio = devicePixelRatio || 1;
    canvas.current.width = Math.round(innerPx * ratio);
    canvas.current.height = Math.round(heightPx * ratio);
    const cross = focused;
    drawMap(
      canvas.current,
      { frame, view, outlines, units, points: places, order, band, bands, selected, box, corner, cross },
      ratio,
    );
  }, [frame, view, outlines, units, places, order, band, bands, selected, box, corner, focused, innerPx, heightPx]);

  const zoom = (factor: number, at: readonly [number, number]) => setView((now) => zoomed(frame, now, factor, at));
  const middle: [number, number] = [innerPx / 2, heightPx / 2];
  const reset = () => setView(AT_REST);
  useGestures(
    holder,
    {
      pan: (dx, dy) => setView((now) => panned(frame, now, dx, dy)),
      zoom,
      reset,
      canZoom: (factor) => (factor > 1 ? view.k < frame.kMost : view.k > frame.kLeast),
      tap: (at) =>
        onPoint(places === null ? null : nearestPoint(places, view, at, { order }), lonLatAt(frame, view, at)),
    },
    [innerPx, heightPx],
  );

  return (
    <div class="area-map" ref={ref}>
      {/* biome-ignore lint/a11y/useSemanticElements: no element is a map */}
      <div
        ref={holder}
        class={view.k > 1 ? 'map-holder map-zoomed' : 'map-holder'}
        role="group"
        aria-label={`Map. Arrow keys move it, plus and minus zoom, 0 shows all, Enter ${enter}.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys move it
        tabIndex={0}
        onFocus={({ currentTarget }) => setFocused(currentTarget.matches(':focus-visible'))}
        onBlur={() => setFocused(false)}
      >
        <canvas ref={canvas} role="img" aria-label={label} />
      </div>
      <div class="buttons map-buttons">
        <button
          type="button"
          aria-label="Zoom in"
          disabled={view.k >= frame.kMost}
          onClick={() => zoom(BUTTON_FACTOR, middle)}
        >
          +
        </button>
        <button
          type="button"
          aria-label="Zoom out"
          disabled={view.k <= frame.kLeast}
          onClick={() => zoom(1 / BUTTON_FACTOR, middle)}
        >
          −
        </button>
        <button type="button" onClick={reset}>
          Show all
        </button>
      </div>
      {failed && <p>The outlines of land and countries could not be loaded; the points stand where they belong.</p>}
    </div>
  );
}

/** Of the holder, in area.css. */
const BORDER_PX = 2;

/** Classes of the points, and the order to draw them in: the worst on top. */
function classed(points: Shown | null, units: UnitSystem) {
  const band = (points?.marginK ?? []).map((margin) => bandOf(margin, units));
  const bands = marginBands(units);
  const rank = (k: number) => (band[k] === NO_WALL ? -1 : (band[k] ?? 0));
  const order = band.map((_, k) => k).sort((a, b) => rank(b) - rank(a));
  return { band, order, bands };
}

function useOutlines(): { readonly outlines: Outlines | null; readonly failed: boolean } {
  const [outlines, setOutlines] = useState<Outlines | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let gone = false;
    loadOutlines().then(
      (loaded) => !gone && setOutlines(loaded),
      () => !gone && setFailed(true),
    );
    return () => {
      gone = true;
    };
  }, []);
  return { outlines, failed };
}
