/** How often each permitted wall stays the coolest while the inputs are out. */
import type { ChoiceConfidence } from '../../../model/index.ts';
import { percentText } from './advice-words.ts';
import { ShareBars } from './share-bars.tsx';

export function ChoicePanel({ choice }: { choice: ChoiceConfidence }) {
  const walls = [...choice.walls].sort((a, b) => b.bestShare - a.bestShare);
  if (walls.length === 0) return <p>The constraints permit no wall: there is no choice to be sure of.</p>;
  return (
    <>
      <p>With the same {choice.samples} sets of inputs on every permitted wall, each was the coolest this often:</p>
      <ShareBars
        bars={walls.map(({ name, bestShare }) => ({
          key: name,
          words: name,
          number: percentText(bestShare),
          share: bestShare,
        }))}
      />
    </>
  );
}
