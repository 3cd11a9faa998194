/** A whole year on every wall: reckoned when somebody asks for it, from a weather file or an invented year. */
import type { ComponentType } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Site, UnitSystem } from '../../../model/index.ts';
import type { SiteResult } from '../../compute/protocol.ts';
import type { WeatherChoice } from '../../compute/year.ts';
import { useYear, type YearInPage } from './use-year.ts';
import { WeatherFile } from './weather-file.tsx';
import { WeatherWords } from './weather-told.tsx';
import type { YearResultsProps } from './year-results.tsx';

export interface YearSectionProps {
  readonly result: SiteResult;
  readonly units: UnitSystem;
  /** The wall that the page shows. */
  readonly chosen: string | null;
  choose(wall: string): void;
}

export function YearSection({ result, units, chosen, choose }: YearSectionProps) {
  const year = useYear();
  const { choice, weather, run, reckoned } = year;
  const fileName = choice.kind === 'file' ? choice.file.name : null;
  const stale = useStale(result.site, reckoned?.result.site);
  const Results = useResults(run.kind === 'running' || reckoned !== null);
  return (
    <section class="year" aria-labelledby="year-heading">
      <h2 id="year-heading">A whole year</h2>
      <p>
        The hot day says whether the box may fail; a year of weather says how often it is too hot and how soon it wears
        out. Every wall is computed through all hours of a weather file, or of a year invented from the climate of the
        site.
      </p>
      <WeatherFile chosen={fileName} choose={(file) => year.choose({ kind: 'file', file }, result)} />
      <InventedYear choice={choice} choose={(next) => year.choose(next, result)} />
      <div role="status">
        {weather.kind === 'reading' && <p>{fileName === null ? 'Inventing the year…' : 'Reading the file…'}</p>}
        {weather.kind === 'refused' && (
          <p class="weather-refused">
            <b>{fileName ?? 'An invented year'} cannot be used:</b> {weather.message}
          </p>
        )}
      </div>
      {weather.kind === 'told' && <WeatherWords weather={weather.weather} units={units} />}
      <YearControl year={year} result={result} again={reckoned !== null} />
      {reckoned !== null && stale && run.kind !== 'running' && (
        <p class="badge badge-stale">Out of date: of the site before the last change</p>
      )}
      {reckoned !== null &&
        (Results === 'failed' ? (
          <p>The pictures of the year could not be loaded. Try again when connected.</p>
        ) : (
          Results && <Results reckoned={reckoned} units={units} chosen={chosen} choose={choose} />
        ))}
    </section>
  );
}

/** Says which year is taken where no file is, and offers another. */
function InventedYear({ choice, choose }: { choice: WeatherChoice; choose(choice: WeatherChoice): void }) {
  if (choice.kind === 'file') {
    return (
      <p>
        <button type="button" class="small-button" onClick={() => choose({ kind: 'invented', seed: 1 })}>
          Take an invented year instead
        </button>
      </p>
    );
  }
  const { seed } = choice;
  return (
    <p>
      Without a file the year is invented, number {seed}, from the climate sample of the site; it is no record of the
      place.{' '}
      <button type="button" class="small-button" onClick={() => choose({ kind: 'invented', seed: seed + 1 })}>
        Take another invented year
      </button>
    </p>
  );
}

/** The button, how far it is, and the way to stop it. */
function YearControl({ year, result, again }: { year: YearInPage; result: SiteResult; again: boolean }) {
  const { weather, run, reckon, cancel } = year;
  if (run.kind === 'running') {
    const { done, of } = run;
    return (
      <p class="year-control">
        <progress aria-label="The year: computing" value={done > 0 ? done / of : undefined} />
        <span role="status">
          Wall {Math.min(done + 1, of)} of {of}
        </span>
        <button type="button" class="small-button" onClick={cancel}>
          Cancel the year
        </button>
      </p>
    );
  }
  return (
    <div class="year-control">
      <button
        type="button"
        disabled={weather.kind === 'reading' || weather.kind === 'refused'}
        onClick={() => reckon(result)}
      >
        {again ? 'Compute the year again' : 'Compute the year'}
      </button>
      <span role="status">
        {run.kind === 'stopped' && 'It was stopped.'}
        {run.kind === 'failed' && <b class="year-failed">The year could not be computed: {run.message}</b>}
      </span>
    </div>
  );
}

/** Whether a site differs from the one that was reckoned; another wall or unit to look at makes a new object of the same. */
function useStale(now: Site, then: Site | undefined): boolean {
  return useMemo(() => then !== undefined && JSON.stringify(now) !== JSON.stringify(then), [now, then]);
}

/** What shows a year comes when it is first needed. */
function useResults(needed: boolean): ComponentType<YearResultsProps> | 'failed' | null {
  const [Results, setResults] = useState<ComponentType<YearResultsProps> | 'failed' | null>(null);
  useEffect(() => {
    if (!needed) return;
    import('./year-results.tsx').then(
      ({ YearResults }) => setResults(() => YearResults),
      () => setResults('failed'),
    );
  }, [needed]);
  return Results;
}
