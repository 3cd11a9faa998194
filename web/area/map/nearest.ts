/** Which point of a map a finger means. */
import type { Placed, View } from './frame.ts';

/** Half of the 44 px that a finger needs. */
export const REACH_PX = 22;

/** Index of the point nearest to a place of the map, or null where none is within reach. Of two alike, the one drawn on top. */
export function nearestPoint(
  { x, y }: Placed,
  view: View,
  [px, py]: readonly [number, number],
  { order, reachPx = REACH_PX }: { readonly order: ArrayLike<number>; readonly reachPx?: number },
): number | null {
  let best: number | null = null;
  let least = reachPx * reachPx;
  for (let at = 0; at < order.length; at += 1) {
    const k = order[at] as number;
    const dx = (x[k] as number) * view.k + view.x - px;
    const dy = (y[k] as number) * view.k + view.y - py;
    const square = dx * dx + dy * dy;
    if (square <= least) {
      least = square;
      best = k;
    }
  }
  return best;
}
