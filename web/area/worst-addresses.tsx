/** The addresses that need help most: what the map says at a glance, for those who do not look at it. */
import type { UnitSystem } from '../../model/index.ts';
import { askRows } from './api.ts';
import { marginWords, nameOfRow } from './margin-text.ts';
import { useAnswer } from './use-answer.ts';

const SHOWN = 5;

interface WorstAddressesProps {
  readonly id: string;
  readonly version: number;
  readonly units: UnitSystem;
  choose(row: number): void;
}

export function WorstAddresses({ id, version, units, choose }: WorstAddressesProps) {
  const { answer } = useAnswer((signal) => askRows(id, `sort=margin&order=asc&limit=${SHOWN}`, signal), [id, version]);
  if (answer === null || answer.rows.length === 0) return null;
  return (
    <>
      <h3>Worst addresses</h3>
      <ol class="worst">
        {answer.rows.map((row) => (
          <li key={row.row}>
            <button type="button" class="link-button" onClick={() => choose(row.row)}>
              {nameOfRow(row)}
            </button>
            <span>{marginWords(row.marginK, units)}</span>
          </li>
        ))}
      </ol>
    </>
  );
}
