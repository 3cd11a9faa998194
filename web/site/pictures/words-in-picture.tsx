/** Words that stand in a picture, with a white rim. */
import type { PlacedLabel } from './labels.ts';

export function Words({ labels, kind }: { labels: readonly PlacedLabel[]; kind: 'plain' | 'strong' }) {
  return (
    <>
      {labels.map(({ text, at: [x, y] }) => (
        <text key={`${text} ${x} ${y}`} class={`haloed ${kind}`} x={x} y={y}>
          {text}
        </text>
      ))}
    </>
  );
}
