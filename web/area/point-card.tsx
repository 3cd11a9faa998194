/** One address: its figures, and the way into the view of one site. */
import type { UnitSystem } from '../../model/index.ts';
import { unbroken } from '../site/words.ts';
import { askRow } from './api.ts';
import { marginWords, nameOfRow, peakCell, wallText } from './margin-text.ts';
import { OpenSite } from './open-site.tsx';
import { Refusal, refusedBy } from './refusal.tsx';
import { useAnswer } from './use-answer.ts';

interface PointCardProps {
  readonly id: string;
  readonly row: number;
  readonly units: UnitSystem;
  close(): void;
}

export function PointCard({ id, row: number, units, close }: PointCardProps) {
  const { answer: row, error } = useAnswer((signal) => askRow(id, number, signal), [id, number]);
  if (row === null) return error === null ? <p>Loading row {number} …</p> : <Refusal refused={refusedBy(error)} />;
  const name = nameOfRow(row);
  const figures: readonly (readonly [string, string])[] = [
    ['Room to the limit', marginWords(row.marginK, units)],
    ['Best wall', row.bestWall === null ? 'none' : wallText(row.bestWall)],
    ['Inside air at the peak', peakCell(row.peakInsideAirC, units)],
    ['Walls inside the limits', `${Math.round(row.shareInside * 100)} %`],
    ['On the truck', row.kit],
    ['Least remedy', row.remedy ?? 'none'],
    ['Place', `${row.latitudeDeg.toFixed(4)}, ${row.longitudeDeg.toFixed(4)}`],
    ...Object.entries(row.extra).slice(0, 6),
  ];
  return (
    <article class="point-card" aria-label={name}>
      <h3>{name}</h3>
      <dl>
        {figures.map(([term, value]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{unbroken(value)}</dd>
          </div>
        ))}
      </dl>
      <div class="buttons">
        <OpenSite id={id} row={number} name={name}>
          Open as a site
        </OpenSite>
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
    </article>
  );
}
