/** What would help on the shown wall: each remedy alone, and the best two together on top. */
import {
  figureOf,
  leastEffortWords,
  lowered,
  type Remedy,
  type RemedyList,
  type Site,
  type UnitSystem,
} from '../../../model/index.ts';
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
  const { bestPair, least, peakInsideAirC, marginK, assumption } = list;
  const now = figuresText(figureOf(list, limits), peakInsideAirC, units);
  const gained = gainedWords(limits);
  const card = (remedy: Remedy) => (
    <RemedyCard
      remedy={remedy}
      figures={figuresText(figureOf(remedy, limits), remedy.peakInsideAirC, units)}
      gained={gained}
      units={units}
    />
  );
  return (
    <>
      <p>{unbroken(`As it stands: ${lowered(now)}, ${roomText(marginK, units)}.`)}</p>
      {least !== null && isPairOfItsOwn(list) && (
        <div class="best-pair least-pair">
          <h3>What suffices {leastEffortWords(list)}</h3>
          {card(least)}
        </div>
      )}
      {bestPair === null ? (
        <p>No two together gain more than the best one alone.</p>
      ) : (
        <div class="best-pair">
          <h3>The best two together</h3>
          {card(bestPair)}
        </div>
      )}
      <h3>Each alone: {lowered(gained)}</h3>
      <ol class="remedies">
        {inOrderOfUse(list.remedies).map((remedy) => (
          <li key={remedy.id}>{card(remedy)}</li>
        ))}
      </ol>
      <p class="origin">{assumption}</p>
    </>
  );
}

/** What the verdict recommends is one of the list, or the best two together, or two that are shown nowhere else. */
function isPairOfItsOwn({ least, bestPair, remedies }: RemedyList): boolean {
  return least !== null && least.id !== bestPair?.id && remedies.every(({ id }) => id !== least.id);
}

/** Nothing changes the outside air: where the limits refer to it, a remedy cools the air inside and leaves the margin as it is. */
function gainedWords({ refersTo }: Site['limits']): string {
  return refersTo === 'outsideAir' ? 'Air inside cooler by' : 'Margin gained';
}

/** What can be done first, then what the constraints forbid, what makes it worse last; the largest gain first within each. */
function inOrderOfUse(remedies: readonly Remedy[]): Remedy[] {
  const group = (remedy: Remedy) => (harms(remedy) ? 2 : Number(!remedy.permitted));
  return [...remedies].sort((a, b) => group(a) - group(b) || b.gainK - a.gainK);
}
