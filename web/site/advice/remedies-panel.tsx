/** What would help on the shown wall: each remedy alone, and the best two together on top. */
import { formatQuantity, type Remedy, type RemedyList, type UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../words.ts';
import { roomText } from './advice-words.ts';
import { harms, RemedyCard } from './remedy-card.tsx';

export function RemediesPanel({ list, units }: { list: RemedyList; units: UnitSystem }) {
  const { bestPair, peakInsideAirC, marginK, assumption } = list;
  const peak = formatQuantity('temperature', peakInsideAirC, units);
  return (
    <>
      <p>{unbroken(`As it stands: ${peak} at the peak, ${roomText(marginK, units)}.`)}</p>
      {bestPair === null ? (
        <p>No two together gain more than the best one alone.</p>
      ) : (
        <div class="best-pair">
          <h3>The best two together</h3>
          <RemedyCard remedy={bestPair} units={units} />
        </div>
      )}
      <h3>Each alone: margin gained</h3>
      <ol class="remedies">
        {inOrderOfUse(list.remedies).map((remedy) => (
          <li key={remedy.id}>
            <RemedyCard remedy={remedy} units={units} />
          </li>
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
