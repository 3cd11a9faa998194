/** One remedy: what is done, what it gains, what it costs, and whether it is enough. */
import { capital, type Remedy, type UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../words.ts';
import { roomText, signedDifference, workText } from './advice-words.ts';

interface RemedyCardProps {
  readonly remedy: Remedy;
  /** The temperatures that it comes to, in words. */
  readonly figures: string;
  /** What its gain is a gain of: "Margin gained". */
  readonly gained: string;
  readonly units: UnitSystem;
}

/** A change smaller than this is no more than noise of the simulation, K. */
const LEAST_HARM_K = 0.05;

/** Whether a remedy makes things worse. */
export function harms({ gainK }: Remedy): boolean {
  return gainK < -LEAST_HARM_K;
}

export function RemedyCard({ remedy, figures, gained, units }: RemedyCardProps) {
  const { text, effort, marginK, gainK, caution } = remedy;
  return (
    <article class="remedy" data-remedy={remedy.id}>
      <p class="remedy-text">{unbroken(capital(text))}</p>
      <p class="remedy-gain">
        <span class="visually-hidden">{gained}: </span>
        <b>{signedDifference(gainK, units)}</b>
      </p>
      <p class="remedy-figures">
        {unbroken(
          `${figures}, ${roomText(marginK, units)}. ` +
            `Work: ${workText(effort.hours)}, ${effort.parts === 'none' ? 'no parts' : effort.parts}.`,
        )}
      </p>
      <ul class="remedy-marks">
        {marksOf(remedy).map(({ kind, mark, words }) => (
          <li key={kind} class={`remedy-mark remedy-mark-${kind}`}>
            <span aria-hidden="true">{mark}</span> {words}
          </li>
        ))}
      </ul>
      {caution !== '' && <p class="remedy-caution">{caution}</p>}
    </article>
  );
}

function marksOf(remedy: Remedy) {
  return [
    remedy.withinLimits
      ? { kind: 'enough', mark: '✓', words: 'within the limit with it' }
      : { kind: 'short', mark: '✕', words: 'past the limit with it' },
    ...(remedy.permitted ? [] : [{ kind: 'barred', mark: '✕', words: 'not permitted by the constraints' }]),
    ...(harms(remedy) ? [{ kind: 'harm', mark: '!', words: 'makes it worse' }] : []),
  ];
}
