/** How sure the forecast of the shown wall is: the spread of its peak, the chance of passing the limit, and what matters most. */
import {
  capital,
  type DayResult,
  formatQuantity,
  type Site,
  type UnitSystem,
  type WallConfidence,
} from '../../../model/index.ts';
import { limitSubject, unbroken } from '../words.ts';
import { chanceWords, percentText } from './advice-words.ts';
import { ConfidenceBand } from './confidence-band.tsx';
import { ShareBars } from './share-bars.tsx';

interface ConfidencePanelProps {
  readonly confidence: WallConfidence;
  readonly day: DayResult;
  readonly site: Site;
  readonly units: UnitSystem;
}

export function ConfidencePanel({ confidence, day, site, units }: ConfidencePanelProps) {
  const { peakInsideAirC, chanceOverLimit, weights, samples, assumption } = confidence;
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  const { p10, p50, p90 } = peakInsideAirC;
  const spread = `In eight of ten cases the air inside peaks between ${temperature(p10)} and ${temperature(p90)}.`;
  const peaks = [
    ['1 in 10 stays below', p10],
    ['Half stay below', p50],
    ['9 in 10 stay below', p90],
  ] as const;
  return (
    <>
      <p>
        {unbroken(
          `The inputs are guesses. The day was computed ${samples} times with inputs that are somewhat out. ${spread}`,
        )}
      </p>
      <dl class="advice-figures" aria-label="Peak of the air inside">
        {peaks.map(([term, celsius]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>
              <b>{unbroken(temperature(celsius))}</b>
            </dd>
          </div>
        ))}
      </dl>
      <p class="chance">
        Chance that the {limitSubject(site.limits.refersTo)} passes {unbroken(temperature(site.limits.maxC))}:{' '}
        <b>{percentText(chanceOverLimit)}</b>, {chanceWords(chanceOverLimit)}.
      </p>
      <ConfidenceBand confidence={confidence} day={day} site={site} units={units} summary={spread} />
      <h3>Which inputs matter most for the peak</h3>
      <p>
        The number is a rank correlation. +1: the more of this, the hotter, always. −1: the more of this, the cooler.
        Near 0: it hardly matters; below about {chanceLevel(samples).toFixed(1)} it cannot be told from chance.
      </p>
      <ShareBars
        bars={weights.map(({ input, text, rankCorrelation }) => ({
          key: input,
          words: capital(text),
          number: `${rankCorrelation < 0 ? '−' : '+'}${Math.abs(rankCorrelation).toFixed(2)}`,
          share: Math.abs(rankCorrelation),
          striped: rankCorrelation < 0,
        }))}
      />
      <p class="origin">{assumption}</p>
    </>
  );
}

/** A rank correlation of unrelated values stays below this in 19 of 20 cases (large-sample normal approximation). */
function chanceLevel(samples: number): number {
  return 1.96 / Math.sqrt(samples - 1);
}
