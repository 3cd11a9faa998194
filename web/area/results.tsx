/** What a screening found: on the map, in classes, in a table, as files; and what it rests on. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { UnitSystem } from '../../model/index.ts';
import { unbroken } from '../site/words.ts';
import { apiAddress, askPoints, askSummary, type Points, type Screening, type Summary } from './api.ts';
import { HistogramPicture } from './histogram-picture.tsx';
import { KitTable } from './kit-table.tsx';
import { AreaMap } from './map/area-map.tsx';
import { bandCounts, marginBands } from './margin-bands.ts';
import { PointCard } from './point-card.tsx';
import { Refusal, refusedBy } from './refusal.tsx';
import { RowsTable } from './rows-table.tsx';
import { counted, countText, foundWords } from './run-words.ts';
import { useAnswer } from './use-answer.ts';
import { WorstAddresses } from './worst-addresses.tsx';

interface ResultsProps {
  readonly screening: Screening;
  /** Changes when there is more to see. */
  readonly version: number;
  readonly units: UnitSystem;
}

export function Results({ screening, version, units }: ResultsProps) {
  const { id, status } = screening;
  const summary = useAnswer((signal) => askSummary(id, units, signal), [id, version, units]);
  const points = useAnswer((signal) => askPoints(id, signal), [id, version]);
  const [row, setRow] = useState<number | null>(null);
  const mapped = useRef<HTMLElement>(null);
  const choose = (chosen: number) => {
    setRow(chosen);
    mapped.current?.scrollIntoView({ block: 'start' });
  };
  if (summary.answer === null) {
    return summary.error === null ? (
      <p role="status">Loading the results …</p>
    ) : (
      <Refusal refused={refusedBy(summary.error)} />
    );
  }
  const { counts } = summary.answer;
  return (
    <div class="results">
      <section aria-labelledby="found-heading">
        <h2 id="found-heading">{status === 'done' ? 'What was found' : 'What was found so far'}</h2>
        <p class="found">{foundWords(counts)}</p>
        {counts.rejected > 0 && <RejectedWords summary={summary.answer} />}
        <Downloads screening={screening} rejected={counts.rejected} />
      </section>
      <section ref={mapped} class="on-map" aria-labelledby="map-heading">
        <h2 id="map-heading">On the map</h2>
        {points.answer === null ? (
          points.error === null ? (
            <p role="status">Loading the points …</p>
          ) : (
            <Refusal refused={refusedBy(points.error)} />
          )
        ) : (
          <MapSection id={id} points={points.answer} version={version} row={row} setRow={setRow} units={units} />
        )}
      </section>
      <section aria-labelledby="margins-heading">
        <h2 id="margins-heading">Margins</h2>
        <HistogramPicture margins={summary.answer.marginHistogram} units={units} />
      </section>
      <section aria-labelledby="truck-heading">
        <h2 id="truck-heading">On the truck</h2>
        <KitTable summary={summary.answer} />
      </section>
      <RowsTable id={id} version={version} summary={summary.answer} units={units} choose={choose} />
      <Groundwork summary={summary.answer} />
    </div>
  );
}

function RejectedWords({ summary }: { summary: Summary }) {
  const { rejected } = summary.counts;
  return (
    <details class="area-rejected">
      <summary>{counted(rejected, 'row was rejected', 'rows were rejected')}; the others are not touched by it</summary>
      <ul>
        {summary.rejectReasons.slice(0, 8).map(({ reason, count }) => (
          <li key={reason}>
            {counted(count, 'row', 'rows')}: {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

function Downloads({ screening, rejected }: { screening: Screening; rejected: number }) {
  if (screening.status !== 'done') return <p>The files can be downloaded once it is done.</p>;
  const address = (file: string) => apiAddress(`screenings/${encodeURIComponent(screening.id)}/${file}`);
  return (
    <div class="buttons downloads">
      <a class="button" href={address('results.csv')} download>
        Results as CSV
      </a>
      <a class="button" href={address('results.geojson')} download>
        Results as GeoJSON
      </a>
      {rejected > 0 && (
        <a class="button" href={address('rejects.csv')} download>
          Rejected rows
        </a>
      )}
    </div>
  );
}

interface MapSectionProps {
  readonly id: string;
  readonly points: Points;
  readonly version: number;
  readonly row: number | null;
  readonly units: UnitSystem;
  setRow(row: number | null): void;
}

function MapSection({ id, points, version, row, setRow, units }: MapSectionProps) {
  const bands = marginBands(units);
  const bandSizes = useMemo(() => bandCounts(points.marginK, units), [points, units]);
  const selected = row === null ? -1 : points.row.indexOf(row);
  const [missed, setMissed] = useState(false);
  useEffect(() => setMissed(false), [row]);
  const told = bands.flatMap(({ words }, k) => (bandSizes[k] ? [`${bandSizes[k]} ${words}`] : [])).join(', ');
  return (
    <>
      {points.thinned && (
        <p>
          The map cannot show all {countText(points.total)} addresses: of each small cell only the worst one is drawn
          and counted here. All of them are in the histogram, the table and the files.
        </p>
      )}
      <div class="map-parts">
        <AreaMap
          label={`Map of ${counted(points.row.length, 'address', 'addresses')} by margin to the limit: ${told}.`}
          points={points}
          units={units}
          selected={selected < 0 ? null : selected}
          onPoint={(index) => {
            setMissed(index === null);
            if (index !== null) setRow(points.row[index] ?? null);
          }}
          enter="picks the address nearest to the cross"
        />
        <div class="map-words">
          <h3>Room to the limit on the best wall</h3>
          <ul class="band-key">
            {bands.map(({ words, d, fill }, k) => (
              <li key={words}>
                <svg width="22" height="22" viewBox="-11 -11 22 22" aria-hidden="true">
                  <path d={d} fill={fill} fill-rule="evenodd" stroke="#000" stroke-width="1.25" />
                </svg>
                <span>{unbroken(words)}</span>
                <b>{countText(bandSizes[k] ?? 0)}</b>
              </li>
            ))}
          </ul>
          <div role="status">
            {row !== null ? (
              <PointCard key={row} id={id} row={row} units={units} close={() => setRow(null)} />
            ) : (
              <p>
                {missed
                  ? 'No address there. Point closer to a sign.'
                  : 'Point at a sign to read it and to open it as a site.'}
              </p>
            )}
          </div>
          <WorstAddresses id={id} version={version} units={units} choose={setRow} />
        </div>
      </div>
    </>
  );
}

/** What the figures rest on; a forecast is never shown without. */
function Groundwork({ summary }: { summary: Summary }) {
  const { climates, assumptions, example } = summary;
  return (
    <section class="groundwork" aria-labelledby="rests-heading">
      <h2 id="rests-heading">What this rests on</h2>
      <h3>The hot day</h3>
      <ul>
        {climates.map(({ used, text, count }) => (
          <li key={used}>
            {counted(count, 'address', 'addresses')}: {unbroken(text)}
          </li>
        ))}
      </ul>
      <h3>Assumptions</h3>
      <ul>
        {assumptions.map((assumption) => (
          <li key={assumption}>{unbroken(assumption)}</li>
        ))}
      </ul>
      {example !== null && (
        <>
          <h3>What row {example.row}, as an example, is filled in with</h3>
          <ul>
            {example.assumptions.map(({ subject, text, origin }) => (
              <li key={`${subject} ${text}`}>{unbroken(origin === '' ? text : `${text} (${origin})`)}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
