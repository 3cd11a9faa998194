/** Fingers, mouse, wheel and keys move a map. */
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export interface Moves {
  pan(dx: number, dy: number): void;
  zoom(factor: number, at: readonly [number, number]): void;
  tap(at: readonly [number, number]): void;
  reset(): void;
  /** Whether a wheel that zooms so has any effect; else the page scrolls. */
  canZoom(factor: number): boolean;
}

/** A finger that moved no farther meant a tap, px. */
const STILL_PX = 6;
const KEY_PX = 60;
const KEY_FACTOR = 1.5;
const WHEEL_FACTOR = 0.0018;
/** A wheel that turns by lines, px in a line. */
const LINE_PX = 16;

interface Finger {
  x: number;
  y: number;
  readonly from: readonly [number, number];
}

/** Listens on the element; `size` is the map's, in its own px. */
export function useGestures(
  ref: RefObject<HTMLElement | null>,
  moves: Moves,
  [widthPx, heightPx]: [number, number],
): void {
  // The listeners stay; what they call is the newest.
  const current = useRef(moves);
  current.current = moves;
  const size = useRef<[number, number]>([widthPx, heightPx]);
  size.current = [widthPx, heightPx];

  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const fingers = new Map<number, Finger>();
    let moved = false;
    const at = (event: MouseEvent): [number, number] => {
      const { left, top } = element.getBoundingClientRect();
      return [event.clientX - left - element.clientLeft, event.clientY - top - element.clientTop];
    };
    const down = (event: PointerEvent) => {
      if (event.button !== 0) return;
      const [x, y] = at(event);
      if (fingers.size === 0) moved = false;
      fingers.set(event.pointerId, { x, y, from: [x, y] });
    };
    const move = (event: PointerEvent) => {
      const finger = fingers.get(event.pointerId);
      if (!finger) return;
      const [x, y] = at(event);
      if (!moved && Math.hypot(x - finger.from[0], y - finger.from[1]) < STILL_PX) return;
      // Caught only once it drags: a tap is left to whatever lies there.
      if (!moved) element.setPointerCapture(event.pointerId);
      moved = true;
      const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
      if (other) {
        const before = Math.hypot(finger.x - other.x, finger.y - other.y);
        const after = Math.hypot(x - other.x, y - other.y);
        if (before > 0) current.current.zoom(after / before, [(x + other.x) / 2, (y + other.y) / 2]);
        current.current.pan((x - finger.x) / 2, (y - finger.y) / 2);
      } else current.current.pan(x - finger.x, y - finger.y);
      finger.x = x;
      finger.y = y;
    };
    const up = (event: PointerEvent) => {
      const finger = fingers.get(event.pointerId);
      if (!fingers.delete(event.pointerId) || !finger || moved || event.type !== 'pointerup') return;
      current.current.tap([finger.x, finger.y]);
    };
    const wheel = (event: WheelEvent) => {
      const turn = event.deltaY * (event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE_PX : 1);
      // A pinch on a touch pad comes as a wheel with Control, in small turns.
      const factor = Math.exp(-turn * WHEEL_FACTOR * (event.ctrlKey ? 4 : 1));
      if (!current.current.canZoom(factor)) return;
      event.preventDefault();
      current.current.zoom(factor, at(event));
    };
    const key = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const [width, height] = size.current;
      const middle: [number, number] = [width / 2, height / 2];
      const { pan, zoom, tap, reset } = current.current;
      const actions: Record<string, () => void> = {
        ArrowLeft: () => pan(KEY_PX, 0),
        ArrowRight: () => pan(-KEY_PX, 0),
        ArrowUp: () => pan(0, KEY_PX),
        ArrowDown: () => pan(0, -KEY_PX),
        '+': () => zoom(KEY_FACTOR, middle),
        '=': () => zoom(KEY_FACTOR, middle),
        '-': () => zoom(1 / KEY_FACTOR, middle),
        '0': reset,
        Enter: () => tap(middle),
      };
      const action = actions[event.key];
      if (!action) return;
      event.preventDefault();
      action();
    };
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    // Passive listeners could not keep the page from scrolling.
    element.addEventListener('wheel', wheel, { passive: false });
    element.addEventListener('keydown', key);
    return () => {
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('keydown', key);
    };
  }, [ref]);
}
