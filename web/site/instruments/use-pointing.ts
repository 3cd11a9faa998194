/** Where the device points while somebody takes a reading; nothing listens before and after. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import { type OrientationReading, type Pointing, pointingOf, steadyHeading } from './pointing.ts';

export type PointingState =
  | { readonly kind: 'off' }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'reading'; readonly pointing: Pointing }
  /** Why there is no reading, in words. */
  | { readonly kind: 'none'; readonly why: string };

export interface PointingInPage {
  readonly state: PointingState;
  /** To be called by a tap: some browsers ask the person, and only then. */
  start(): void;
  stop(): void;
}

/** A device that has said nothing for so long has no such sensor, ms. */
const PATIENCE_MS = 4000;

/** Headings that are averaged: about half a second of them. */
const STEADY_OVER = 20;

/** The page follows the sensor no oftener than this, ms. */
const SHOW_EVERY_MS = 150;

const INSECURE = 'The browser gives readings of the device only to pages served over HTTPS. Type the figure instead.';
const UNSUPPORTED = 'This browser knows no orientation of the device. Type the figure instead.';
const REFUSED = 'The browser was told not to give the orientation of the device. Type the figure instead.';
const SILENT = 'The device tells no orientation: it may have no such sensor. Type the figure instead.';

/** WebKit's, which has to be asked. */
interface AskedOrientation {
  requestPermission?: () => Promise<'granted' | 'denied'>;
}

export function usePointing(): PointingInPage {
  const [state, setState] = useState<PointingState>({ kind: 'off' });
  const listening = state.kind === 'waiting' || state.kind === 'reading';

  const start = useCallback(async () => {
    if (!('DeviceOrientationEvent' in window)) {
      setState({ kind: 'none', why: isSecureContext ? UNSUPPORTED : INSECURE });
      return;
    }
    const { requestPermission } = DeviceOrientationEvent as AskedOrientation;
    const answer = await requestPermission?.call(DeviceOrientationEvent).catch(() => 'denied' as const);
    setState(answer === 'denied' ? { kind: 'none', why: REFUSED } : { kind: 'waiting' });
  }, []);
  const stop = useCallback(() => setState({ kind: 'off' }), []);

  useEffect(() => {
    if (!listening) return;
    let headings: number[] = [];
    let shownAt = 0;
    const follow = (event: Event) => {
      const reading = event as Event & OrientationReading;
      // The relative event says as much of the tilt, and would take the heading away again.
      if (event.type === 'deviceorientation' && headings.length > 0 && !('webkitCompassHeading' in event)) return;
      const absolute = reading.absolute || event.type === 'deviceorientationabsolute';
      const { alpha, beta, gamma, webkitCompassHeading } = reading;
      const { headingDeg, elevationDeg } = pointingOf(
        { alpha, beta, gamma, absolute, ...(webkitCompassHeading === undefined ? {} : { webkitCompassHeading }) },
        screen.orientation?.angle ?? 0,
      );
      // Desktop browsers send one event that holds nothing.
      if (headingDeg === null && elevationDeg === null) return;
      headings = headingDeg === null ? [] : [...headings, headingDeg].slice(-STEADY_OVER);
      if (event.timeStamp - shownAt < SHOW_EVERY_MS) return;
      shownAt = event.timeStamp;
      setState({ kind: 'reading', pointing: { headingDeg: steadyHeading(headings), elevationDeg } });
    };
    const silent = setTimeout(
      () =>
        setState((now) => (now.kind === 'waiting' ? { kind: 'none', why: isSecureContext ? SILENT : INSECURE } : now)),
      PATIENCE_MS,
    );
    const kinds = ['deviceorientationabsolute', 'deviceorientation'];
    for (const kind of kinds) addEventListener(kind, follow);
    return () => {
      clearTimeout(silent);
      for (const kind of kinds) removeEventListener(kind, follow);
    };
  }, [listening]);

  return { state, start, stop };
}
