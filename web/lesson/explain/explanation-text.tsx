/** The equation behind a figure, with the values in it and where it comes from; values open their own equations. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Explanation, explain, explainable, formatQuantity, type UnitSystem } from '../../../model/index.ts';
import { placeClock } from '../../site/place-clock.ts';
import { unbroken } from '../../site/words.ts';
import { ScrollRegion } from '../scroll-region.tsx';
import { Equation, Formula } from './equation.tsx';
import type { Explained } from './explain-button.tsx';

interface ExplanationTextProps {
  readonly explained: Explained;
  readonly units: UnitSystem;
  readonly headingId: string;
  close(): void;
}

export function ExplanationText({ explained, units, headingId, close }: ExplanationTextProps) {
  const { played, step } = explained;
  // The figures that led here, the present one last.
  const [trail, setTrail] = useState<readonly string[]>([explained.what]);
  const what = trail.at(-1) ?? explained.what;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (trail.length > 1) heading.current?.focus();
  }, [trail]);
  const explanation = explain(played, what, step);
  return (
    <>
      {explanation === null ? (
        <h2 id={headingId} ref={heading} tabIndex={-1}>
          At this moment there is nothing to work out: the sun is down, or the day comes from a table.
        </h2>
      ) : (
        <>
          <h2 id={headingId} ref={heading} tabIndex={-1}>
            {explanation.title}
            {momentText(explanation, played.result.timeZone)}: {unbroken(figureText(explanation, units))}
          </h2>
          <Equation title={explanation.title} math={explanation.math} words={explanation.equation} />
          <Values explanation={explanation} open={(next) => setTrail([...trail, next])} />
          <p class="explain-check">{explanation.check}</p>
          {explanation.note !== '' && <p>{explanation.note}</p>}
          <p>
            Source: {explanation.source}
            {units === 'us' && ' Equations stay in SI units.'}
          </p>
        </>
      )}
      <label class="explain-other">
        <span>Another figure of this box</span>
        <select value={what} onChange={({ currentTarget }) => setTrail([...trail, currentTarget.value])}>
          {explainable(played).map((one) => (
            <option key={one.what} value={one.what}>
              {one.label}
            </option>
          ))}
        </select>
      </label>
      <div class="explain-foot">
        {trail.length > 1 && (
          <button type="button" onClick={() => setTrail(trail.slice(0, -1))}>
            Back
          </button>
        )}
        <button type="button" class="main-button" onClick={close}>
          Close
        </button>
      </div>
    </>
  );
}

function Values({ explanation, open }: { explanation: Explanation; open(what: string): void }) {
  return (
    <ScrollRegion kind="table-scroll" label="Values in the equation">
      <table>
        <thead>
          <tr>
            <th scope="col">Sign</th>
            <th scope="col">Meaning</th>
            <th scope="col">Value</th>
          </tr>
        </thead>
        <tbody>
          {explanation.symbols.map(({ symbol, math, name, shown, unit, what }) => (
            <tr key={symbol}>
              <th scope="row">
                <Formula math={math} words={symbol} />
              </th>
              <td class="words">{name}</td>
              <td>
                {what === null ? (
                  `${shown} ${unit}`
                ) : (
                  <button type="button" class="figure-button" onClick={() => open(what)}>
                    {`${shown} ${unit}`}
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function momentText({ atUtc }: Explanation, timeZone: string): string {
  return atUtc === null ? '' : ` at ${placeClock(timeZone).time(atUtc)}`;
}

/** The figure in the units of the reader; equations stay in SI. */
function figureText({ quantity, value, shown, unit }: Explanation, units: UnitSystem): string {
  return quantity === null ? `${shown} ${unit}` : formatQuantity(quantity, value, units);
}
