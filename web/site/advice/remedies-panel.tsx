/** What would help on the shown wall: each remedy alone, and the best two together on top. */
import { figureOf, type Remedy, type RemedyList, type Site, type UnitSystem } from '../../../model/index.ts';
import { figuresText, unbroken } from '../words.ts';
import { roomText } from './advice-words.ts';
import { harms, RemedyCard } from './remedy-card.tsx';

interface RemediesPanelProps {
  readonly list: RemedyList;
  /** The site that they were simulated on. */
  readonly site: Site;
  readonly units: UnitSystem;
}

export function RemediesPanel({ list, site: { limits }, units }: RemediesPanelProps) {
  const { bestPair, peakInsideAirC, marginK, assumption } = list;
  const now = figuresText(figureOf(list, limits), peakInsideAirC, units);
  const card = (remedy: Remedy) => (
    <RemedyCard
      remedy={remedy}
      figures={figuresText(figureOf(remedy, limits), remedy.peakInsideAirC, units)}
      units={units}
    />
  );
  return (
    <>
      <p>{unbroken(`As it stands: ${now.charAt(0).toLowerCase()}${now.slice(1)}, ${roomText(marginK, units)}.`)}</p>
      {bestPair === null ? (
        <p>No two together gain more than the best one alone.</p>
      ) : (
        <div class="best-pair">
          <h3>The best two together</h3>
          {card(bestPair)}
        </div>
      )}
      <h3>Each alone: margin gained</h3>
      <ol class="remedies">
        {inOrderOfUse(list.remedies).map((remedy) => (
          <li key={remedy.id}>{card(remedy)}</li>
        ))}
      </ol>
      <p class="origin">{assumption}</p>
    </>
  );
}

/** What can be done first, then what the constraints forbid, what makes it worse last; the largest gain first within each. */
function inOrderOfUse(remedies: readonly Remedy[]): Remedy[] {
  const group = (remedy: Remedy) => (harms(remedy) ? 2 : Number(!remedy.permitted));
  return [...remedies].sort((a, b) => group(a) - group(b) || b.gainK - a.gainK);
}
