/** Back and Forward take the view away in which the focus was: it goes on to the heading of the one that comes. */

/** Frames to wait for a view whose code is loaded first, about two seconds. */
const MOST_FRAMES = 120;

/** Gives the focus to the heading of the view once there is one, unless it lies on something already. */
export function focusWhereLost(frames = MOST_FRAMES): void {
  requestAnimationFrame(() => {
    const { activeElement } = document;
    if (activeElement !== null && activeElement !== document.body) return;
    const heading = document.querySelector<HTMLElement>('main h1, main h2');
    if (heading === null) {
      if (frames > 0) focusWhereLost(frames - 1);
      return;
    }
    // Reachable by this alone, and by no press of Tab.
    if (!heading.hasAttribute('tabindex')) heading.tabIndex = -1;
    heading.focus();
  });
}
