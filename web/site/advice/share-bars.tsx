/** Shares of one as bars, each with its words and its number. */
export interface ShareBar {
  readonly key: string;
  readonly words: string;
  /** As written beside the bar. */
  readonly number: string;
  /** Length of the bar, 0 to 1. */
  readonly share: number;
  /** Striped where the number is negative, so that its sign shows without colour. */
  readonly striped?: boolean;
}

export function ShareBars({ bars }: { bars: readonly ShareBar[] }) {
  return (
    <ul class="share-bars">
      {bars.map(({ key, words, number, share, striped = false }) => (
        <li key={key}>
          <span>{words}</span>
          <b class="share-number">{number}</b>
          <span class="share-track" aria-hidden="true">
            <span class={striped ? 'share-bar share-striped' : 'share-bar'} style={{ width: `${100 * share}%` }} />
          </span>
        </li>
      ))}
    </ul>
  );
}
